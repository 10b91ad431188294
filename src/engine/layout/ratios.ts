/**
 * Every counted reading of a layout over its limit, as one vector, with its derivatives by the guides' places:
 * what the placing works on. Which readings count: ladder.ts.
 *
 * Derivatives: differences over `derivativeStepM`, the bend corrected by one Newton step on a mesh of held
 * shape, so their error is of the order of the step and free of mesh noise.
 */
import { criteriaIn } from './criteria.ts';
import type { Ladder } from './ladder-request.ts';
import { type LadderState, makeLadderState, solveLoad, takeLayout } from './ladder-state.ts';

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
  for (let load = 0; load < state.bends.length && bent; load++) {
    bent = solveLoad(state, load) !== 'not-converged';
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
    for (const bend of state.bends) bend.nudge(state.mesh!);
    const there = readRatios(probe);
    for (let j = 0; j < values.length; j++) slopes[j][column] = (there[j] - values[j]) / derivativeStepM;
  });
  return slopes;
}

/** Per load, criterion after criterion: guides 1 to n - 1, or spans 0 to n - 1; then the first guide from the reel. */
function readRatios({ ladder, state }: RatioProbe): Float64Array {
  const { guides, limits } = ladder.request;
  const firstRad = limits.firstLineAngleRad;
  const judged = criteriaIn(limits);
  const counted = judged.reduce((sum, { at }) => sum + guides.count - (at === 'ring' ? 1 : 0), 0);
  const perLoad = counted + (firstRad === undefined ? 0 : 1);
  const values = new Float64Array(state.bends.length * perLoad);
  state.bends.forEach((bend, load) => {
    const { rings, spans } = bend.read(state.mesh!);
    let at = load * perLoad;
    for (const criterion of judged) {
      const limit = limits[criterion.quantity]!;
      if (criterion.at === 'ring') {
        for (let k = 1; k < guides.count; k++) values[at++] = criterion.of(rings[k]) / limit;
      } else for (const span of spans) values[at++] = criterion.of(span) / limit;
    }
    if (firstRad !== undefined) values[at] = rings[guides.count].lineAngleRad / firstRad;
  });
  return values;
}
