/** All that was measured, as one list of data, and its prediction for any state of the unknowns. */

import type { Prediction } from './clamp-derivatives.ts';
import { type ClampModel, clampModel } from './clamp-elements.ts';
import { predictDrops } from './clamp-model.ts';
import { addDrifts } from './curve-model.ts';
import { type MassDatum, massData, predictMass } from './mass-data.ts';
import type { PreparedClamp, PreparedCurve, PreparedRequest } from './prepared-request.ts';
import type { Rows } from './rows.ts';
import { type SpanModel, spanModel } from './span-elements.ts';
import { predictSags } from './span-model.ts';
import { predictSwing, type SwingDatum, swingData } from './swing-data.ts';
import type { Unknowns } from './unknowns.ts';

export interface Datum {
  kind: 'drop' | 'sag' | 'mass' | 'swing' | 'place' | 'length' | 'station';
  setup: number;
  test: number;
  reading: number;
  value: number;
  /** As stated. */
  sigma: number;
  path: string;
}

export interface BenchModel {
  readonly request: PreparedRequest;
  readonly data: readonly Datum[];
  readonly setups: readonly {
    first: number;
    clamp?: ClampModel;
    curve?: PreparedCurve;
    span?: SpanModel;
  }[];
  readonly masses: readonly MassDatum[];
  readonly swings: readonly SwingDatum[];
  readonly rows: Rows;
}

/** A weighing, a count or a tape: its ± does not widen with the scatter of the drops. */
export function standsApart({ kind }: Pick<Datum, 'kind'>): boolean {
  return kind === 'mass' || kind === 'swing' || kind === 'station';
}

/** Where no ± was given: a tape read by eye. Common practice, no source. */
export const commonSigmaM = 0.002;
/** Two tapes laid along a blank to a flag; common practice, no source. */
const twoTapesSigmaM = 0.003;

export function benchModel(request: PreparedRequest, rows: Rows): BenchModel {
  const { lengthM } = request.blank;
  const data: Datum[] = [];
  const setups = request.setups.map((setup, s) => {
    const first = data.length;
    if (setup.kind === 'span') {
      setup.tests.forEach((test, t) => {
        data.push({
          kind: 'sag',
          setup: s,
          test: t,
          reading: 0,
          value: test.sagM,
          sigma: test.sigmaM ?? commonSigmaM,
          path: `setups[${s}].tests[${t}]`,
        });
      });
      return { first, span: spanModel(setup, s, lengthM, rows) };
    }
    setup.tests.forEach((test, t) => {
      test.readings.forEach((reading, r) => {
        data.push({
          kind: setup.curve ? 'place' : 'drop',
          setup: s,
          test: t,
          reading: r,
          value: reading.dropM,
          sigma: Math.hypot(test.sigmaM ?? commonSigmaM, reading.bridgedM ?? 0),
          path: setup.curve ? `setups[${s}].tests[0].points` : `setups[${s}].tests[${t}].readings[${r}]`,
        });
      });
    });
    data.push(...stationData(setup, s, lengthM));
    const clamp = clampModel(setup, s, lengthM, rows);
    if (!setup.curve) return { first, clamp };
    data.push({
      kind: 'length',
      setup: s,
      test: 0,
      reading: -1,
      value: setup.curve.excessM,
      sigma: setup.curve.excessSigmaM,
      path: `setups[${s}].tests[0].points`,
    });
    return { first, clamp, curve: setup.curve };
  });
  const masses = massData(request.blank, rows);
  for (const { value, sigma, path } of masses) {
    data.push({
      kind: 'mass',
      setup: -1,
      test: -1,
      reading: -1,
      value,
      sigma,
      path,
    });
  }
  const swings = swingData(request.blank);
  for (const { value, sigma, path } of swings) {
    data.push({ kind: 'swing', setup: -1, test: -1, reading: -1, value, sigma, path });
  }
  return { request, data, setups, masses, swings, rows };
}

/** How far the two tapes to a flag, from the tip and from the clamp, miss each other; predicted as 0. */
function stationData(
  { flagChecks = [], clampFromTipM, tests }: PreparedClamp,
  setup: number,
  lengthM: number,
): Datum[] {
  const isRead = (station: number) =>
    tests.some(({ readings }) => readings.some(({ fromTipM }) => fromTipM === station));
  return flagChecks.flatMap(({ fromTipM, fromClampM }, i): Datum[] => {
    if (!isRead(fromTipM)) return [];
    const value = (clampFromTipM ?? lengthM) - fromClampM - fromTipM;
    const path = `setups[${setup}].flagChecks[${i}]`;
    return [{ kind: 'station', setup, test: -1, reading: i, value, sigma: twoTapesSigmaM, path }];
  });
}

export function emptyPrediction(model: BenchModel, unknowns: Unknowns): Prediction {
  const n = model.data.length;
  return {
    value: new Float64Array(n),
    jacobian: new Float64Array(n * unknowns.size),
    size: unknowns.size,
    stationSlope: new Float64Array(n),
    loadSlope: new Float64Array(n),
  };
}

/** Overwrites `out`; false where some test found no equilibrium. */
export function predictBench(
  model: BenchModel,
  unknowns: Unknowns,
  z: Float64Array,
  out: Prediction,
): boolean {
  out.jacobian.fill(0);
  let allConverged = true;
  for (const { first, clamp, curve, span } of model.setups) {
    if (clamp) allConverged = predictDrops(clamp, unknowns, z, first, out) && allConverged;
    if (curve) addDrifts(curve, unknowns, z, first, out);
    if (span) allConverged = predictSags(span, unknowns, z, first, out) && allConverged;
  }
  const firstSwing = model.data.length - model.swings.length;
  const firstMass = firstSwing - model.masses.length;
  model.masses.forEach((datum, i) => {
    predictMass(datum, z, unknowns.mass.start, firstMass + i, out);
  });
  model.swings.forEach((datum, i) => {
    allConverged = predictSwing(datum, model.rows, unknowns, z, firstSwing + i, out) && allConverged;
  });
  return allConverged;
}
