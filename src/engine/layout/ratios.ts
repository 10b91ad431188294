/**
 * Every counted reading of a layout over its limit, as one vector, with its derivatives by the guides' places:
 * what the placing works on. Which readings count: ladder.ts.
 *
 * Derivatives: differences over `derivativeStepM`, the bend corrected by one Newton step on a mesh of held
 * shape, so their error is of the order of the step and free of mesh noise.
 */
import { sideSign } from '../bend/bend.ts';
import { readRings, readSpans } from '../bend/reading.ts';
import type { Ladder } from './ladder-request.ts';
import { type LadderState, makeLadderState, nudgeLoad, solveLoad, takeLayout } from './ladder-state.ts';

export interface RatioProbe {
  readonly ladder: Ladder;
  state: LadderState;
}
export interface Ratios {
  values: Float64Array;
  /** Largest value; infinite where a load has no bend. */
  worst: number;
}

const derivativeStepM = 2e-5;

export function makeRatioProbe(ladder: Ladder): RatioProbe {
  return { ladder, state: makeLadderState() };
}

/**
 * Ratios with every load followed up from nothing. Moving guides under load may carry the rod to a bend that
 * loading it would not reach; this one it does reach.
 */
export function freshRatiosAt(probe: RatioProbe, fromTipM: readonly number[]): Ratios {
  probe.state = makeLadderState();
  return ratiosAt(probe, fromTipM);
}

export function ratiosAt(probe: RatioProbe, fromTipM: readonly number[], holdShape = false): Ratios {
  const { ladder, state } = probe;
  takeLayout(state, ladder, fromTipM, holdShape);
  let bent = true;
  for (let load = 0; load < ladder.loadings.length && bent; load++) {
    bent = solveLoad(state, ladder, load) !== 'not-converged';
  }
  const values = readRatios(probe);
  const worst = bent ? values.reduce((most, value) => Math.max(most, value), 0) : Number.POSITIVE_INFINITY;
  return { values, worst };
}

/** Row j holds the derivatives of value j by the stations `moving`, per metre; `at` must be a bent layout. */
export function ratioSlopes(
  probe: RatioProbe,
  fromTipM: readonly number[],
  values: Float64Array,
  moving: readonly number[],
): Float64Array[] {
  const { ladder, state } = probe;
  const slopes = Array.from(values, () => new Float64Array(moving.length));
  moving.forEach((guide, column) => {
    const moved = [...fromTipM];
    moved[guide] += derivativeStepM;
    takeLayout(state, ladder, moved, true);
    for (let load = 0; load < ladder.loadings.length; load++) nudgeLoad(state, ladder, load);
    const there = readRatios(probe);
    for (let j = 0; j < values.length; j++) slopes[j][column] = (there[j] - values[j]) / derivativeStepM;
  });
  return slopes;
}

/** Per load: line angles of guides 1 to n - 1, then gap and extra bend of spans 0 to n - 1. */
function readRatios({ ladder, state }: RatioProbe): Float64Array {
  const { guides, limits } = ladder.request;
  const perLoad = 3 * guides.count - 1;
  const values = new Float64Array(ladder.loadings.length * perLoad);
  const side = sideSign(guides.side);
  ladder.loadings.forEach(({ line }, load) => {
    const rings = readRings(state.mesh!, line!, state.works[load]);
    const spans = readSpans(state.mesh!, line!, side, state.works[load]);
    let at = load * perLoad;
    for (let k = 1; k < guides.count; k++) values[at++] = rings[k].lineAngleRad / limits.lineAngleRad;
    for (const span of spans) values[at++] = span.gapM / limits.gapM;
    for (const span of spans) values[at++] = span.extraBendPerM / limits.extraBendPerM;
  });
  return values;
}
