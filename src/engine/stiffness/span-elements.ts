/** A blank on two supports cut into elements, each with its stiffness, rest curvature and mass. */
import type { FitSpanSetup } from './request.ts';
import { type PlaceInRows, placeInRows, type Rows } from './rows.ts';
import type { Unknowns } from './unknowns.ts';

export interface SpanModel {
  readonly setup: FitSpanSetup;
  readonly index: number;
  /** Element boundaries from the tip; supports and load stand on them. */
  readonly fromTipM: Float64Array;
  readonly fine: readonly PlaceInRows[];
  readonly coarse: readonly PlaceInRows[];
  /** Boundaries of the tip-side support, the load and the butt-side support. */
  readonly tipSide: number;
  readonly load: number;
  readonly buttSide: number;
}

export function spanModel(setup: FitSpanSetup, index: number, blankLengthM: number, rows: Rows): SpanModel {
  const [a, b] = [...setup.supportsFromTipM].sort((p, q) => p - q);
  const marks = [a, b, setup.loadFromTipM];
  const places = [...rows.fine, ...marks, ...middles(rows.fine)].filter((s) => s >= 0 && s <= blankLengthM);
  const fromTipM = Float64Array.from([...new Set(places)].sort((p, q) => p - q));
  const elements = Array.from(fromTipM.subarray(1), (s, e) => 0.5 * (s + fromTipM[e]));
  return {
    setup,
    index,
    fromTipM,
    fine: elements.map((s) => placeInRows(rows.fine, s)),
    coarse: elements.map((s) => placeInRows(rows.coarse, s)),
    tipSide: fromTipM.indexOf(a),
    load: fromTipM.indexOf(setup.loadFromTipM),
    buttSide: fromTipM.indexOf(b),
  };
}

function middles(rows: Float64Array): number[] {
  return Array.from(rows.subarray(1), (s, i) => 0.5 * (s + rows[i]));
}

export interface ElementValues {
  length: Float64Array;
  stiffness: Float64Array;
  rest: Float64Array;
  massKg: Float64Array;
}

export function elementValues(model: SpanModel, unknowns: Unknowns, z: Float64Array): ElementValues {
  const n = model.fine.length;
  const turned = model.setup.turnedRad ?? 0;
  const of = (value: (e: number) => number) => Float64Array.from({ length: n }, (_, e) => value(e));
  const mix = (start: number, { row, weight }: PlaceInRows, f: (v: number) => number) =>
    (1 - weight) * f(z[start + row]) + weight * f(z[start + row + 1]);
  const same = (v: number) => v;
  const { rest, restAcross, stiffness, mass } = unknowns;
  const length = of((e) => model.fromTipM[e + 1] - model.fromTipM[e]);
  return {
    length,
    stiffness: of((e) => mix(stiffness.start, model.fine[e], Math.exp)),
    rest: of((e) => {
      const inPlane = rest.size > 0 ? Math.cos(turned) * mix(rest.start, model.coarse[e], same) : 0;
      return (
        inPlane + (restAcross.size > 0 ? Math.sin(turned) * mix(restAcross.start, model.coarse[e], same) : 0)
      );
    }),
    massKg: of((e) => mix(mass.start, model.coarse[e], Math.exp) * length[e]),
  };
}
