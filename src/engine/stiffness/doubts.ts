/**
 * What can have gone wrong on the bench, each as a pattern of errors in the data with one unknown amplitude:
 * one reading misread, a stretch of a traced curve that follows something else, a flag that stands elsewhere, a clamp
 * that slipped, a blank that still swings, a wrong weight, the wrong edge. Two loads swapped are no such pattern; see
 * resolve.ts.
 */
import type { BenchModel, Datum } from './bench-model.ts';
import { outsideDiameterAt } from './diameters.ts';
import type { DoubtKind } from './fit-kinds.ts';
import type { ExtraPattern, MostProbable } from './most-probable.ts';
import type { PreparedClamp } from './prepared-request.ts';
import { swayOf } from './sway.ts';
import type { Unknowns } from './unknowns.ts';

export interface Doubt {
  kind: DoubtKind;
  /** What is named: the test or reading it stands at; a flag, in every test. */
  data: readonly number[];
  setup: number;
  test: number;
  pattern: ExtraPattern;
  /** Prior standard deviation of the amplitude, in its own unit (m, rad, 1). */
  sigma: number;
}

/** All doubts worth a look, with the patterns as the present state of the fit sees them. */
export function possibleDoubts(model: BenchModel, unknowns: Unknowns, best: MostProbable): Doubt[] {
  const { data } = model;
  const doubts: Doubt[] = [];
  data.forEach((datum, d) => {
    if (datum.kind === 'place') {
      doubts.push(stretchDoubt(model, datum, d));
      return;
    }
    const kind = datum.kind === 'mass' || datum.kind === 'swing' ? 'mass' : 'reading';
    doubts.push({
      kind,
      ...placeOf(datum),
      data: [d],
      pattern: [{ datum: d, amount: 1 }],
      sigma: 1,
    });
  });
  doubts.push(...flagDoubts(model, best));
  model.request.setups.forEach((setup, s) => {
    setup.tests.forEach((_, t) => {
      doubts.push(...testDoubts(model, unknowns, best, s, t));
    });
    if (setup.kind !== 'span' && !setup.curve)
      doubts.push(...edgeDoubt(model, best, s, -1, members(data, s)));
  });
  return doubts;
}

/** Over so much of the blank a trace may follow a cable or a shadow, m. */
const strayM = 0.05;

/** The curve strays about this place, a bump of some centimetres. */
function stretchDoubt({ data, request: { setups } }: BenchModel, datum: Datum, d: number): Doubt {
  const at = stationOf(setups, datum);
  const near = data.flatMap((other, i) =>
    other.kind === 'place' && other.setup === datum.setup
      ? [{ datum: i, amount: Math.exp(-0.5 * ((stationOf(setups, other) - at) / strayM) ** 2) }]
      : [],
  );
  const pattern = near.filter(({ amount }) => amount > 0.01);
  return { kind: 'stretch', ...placeOf(datum), data: [d], pattern, sigma: 0.1 };
}

function placeOf({ setup, test }: Datum) {
  return { setup, test };
}

function members(
  data: readonly Datum[],
  setup: number,
  holds: (test: number) => boolean = () => true,
): number[] {
  return data.flatMap((datum, d) =>
    datum.setup >= 0 && datum.setup === setup && datum.kind !== 'station' && holds(datum.test) ? [d] : [],
  );
}

function patternBy(at: readonly number[], amount: (datum: number) => number): ExtraPattern {
  return at.map((datum) => ({ datum, amount: amount(datum) }));
}

/** A flag that was read in several tests and does not stand where its station says. The tip is no flag. */
function flagDoubts({ data, request }: BenchModel, { prediction }: MostProbable): Doubt[] {
  const groups = new Map<number, number[]>();
  data.forEach((datum, d) => {
    if (datum.kind !== 'drop') return;
    const station = stationOf(request.setups, datum);
    if (station > 0) groups.set(station, [...(groups.get(station) ?? []), d]);
  });
  return [...groups.values()]
    .map((group) => ({ group, checks: checksOf(data, request.setups, data[group[0]]) }))
    .filter(({ group, checks }) => group.length + checks.length > 1)
    .map(({ group, checks }) => ({
      kind: 'flag' as const,
      ...placeOf(data[group[0]]),
      data: group,
      pattern: [...patternBy(group, (d) => prediction.stationSlope[d]), ...patternBy(checks, () => 1)],
      sigma: 0.1,
    }));
}

/** Second measurements of a flag's station. */
function checksOf(data: readonly Datum[], setups: BenchModel['request']['setups'], flag: Datum): number[] {
  const station = stationOf(setups, flag);
  return data.flatMap((datum, d) =>
    datum.kind === 'station' && stationOf(setups, datum) === station ? [d] : [],
  );
}

export function stationOf(
  setups: BenchModel['request']['setups'],
  { kind, setup, test, reading }: Datum,
): number {
  const owner = setups[setup];
  if (kind === 'station') return (owner as PreparedClamp).flagChecks?.[reading].fromTipM ?? 0;
  return owner.kind === 'span' ? owner.loadFromTipM : owner.tests[test].readings[reading].fromTipM;
}

function testDoubts(
  model: BenchModel,
  unknowns: Unknowns,
  best: MostProbable,
  setup: number,
  test: number,
): Doubt[] {
  const { data, request } = model;
  const { prediction } = best;
  const here = members(data, setup, (t) => t === test);
  const common = { setup, test, data: here };
  const doubts: Doubt[] = [];
  // a weight alone cannot be told from a blank as much stiffer
  const others = data.some(({ setup: s, test: t }) => s >= 0 && (s !== setup || t !== test));
  const owner = request.setups[setup];
  // a picture of a stand is weighed with its neighbours (stand-trials.ts)
  const standsAlone = owner.kind === 'span' || !owner.curve || owner.curve.ownColumns.length === 0;
  if (others && standsAlone && here.some((d) => prediction.loadSlope[d] !== 0)) {
    doubts.push({
      kind: 'load',
      ...common,
      pattern: patternBy(here, (d) => prediction.loadSlope[d]),
      sigma: 1,
    });
  }
  if (!standsAlone) {
    const sways = swayOf(model, unknowns, best, setup);
    doubts.push(...sways.map((sway) => ({ kind: 'sway' as const, setup, test, ...sway })));
  }
  if (owner.kind === 'span' || owner.curve) return doubts;
  if (test > 0) {
    const column = unknowns.tilt.start + setup;
    const onwards = members(data, setup, (t) => t >= test);
    const pattern = patternBy(onwards, (d) => prediction.jacobian[d * prediction.size + column]);
    doubts.push({
      kind: 'slip',
      ...common,
      data: onwards,
      pattern,
      sigma: 0.03,
    });
  }
  if (here.length > 1) {
    doubts.push(...stationsDoubts(model, best, here).map((doubt) => ({ ...common, ...doubt })));
    doubts.push(...edgeDoubt(model, best, setup, test, here));
  }
  return doubts;
}

/** A tape hooked elsewhere moves the tip's own reading too, or the flags alone: who reads the tip sees that it is one. */
function stationsDoubts(
  { data, request }: BenchModel,
  { prediction }: MostProbable,
  here: readonly number[],
): Pick<Doubt, 'kind' | 'pattern' | 'sigma'>[] {
  const flags = here.filter((d) => stationOf(request.setups, data[d]) > 0);
  const groups = flags.length < here.length && flags.length > 1 ? [here, flags] : [here];
  return groups.map((group) => ({
    kind: 'stations',
    pattern: patternBy(group, (d) => prediction.stationSlope[d]),
    sigma: 0.1,
  }));
}

/** Amplitude 1: the lower edge was read as the axis; -1: the upper. `test` -1: in the whole set-up. */
function edgeDoubt(
  { data, request }: BenchModel,
  { prediction }: MostProbable,
  setup: number,
  test: number,
  at: readonly number[],
): Doubt[] {
  if (!request.blank.diameters?.length || at.length < 3) return [];
  const pattern = patternBy(at, (d) => {
    const radius = 0.5 * outsideDiameterAt(request.blank, stationOf(request.setups, data[d]));
    return radius * Math.sqrt(Math.max(0, 1 - prediction.stationSlope[d] ** 2));
  });
  return [{ kind: 'edge', setup, test, data: at, pattern, sigma: 1.5 }];
}
