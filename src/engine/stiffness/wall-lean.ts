/**
 * A wall whose marks hang off level by more than a level's own error. The drift of a lean is straight: at 2.4° it leaves
 * a place a metre off 0.9 mm beside. So the readings are turned back, and the drift holds what is left.
 */
import type { Fitted, StandSlip } from './explanation.ts';
import type { PreparedCurve, PreparedRequest, PreparedSetup } from './prepared-request.ts';

/** How far marks hang off level that nobody held a level to: judgement. */
export const leanSigmaRad = 0.05;
/**
 * Tried from so many of the level's own standard deviations on, below any lean that is said (say-stand.ts): the straight
 * drift may show half of it. The evidence then decides.
 */
const leanFrom = 1;

/** Once for each stand, at its first picture. */
export function leansOf({ problem, best }: Fitted, pictures: readonly number[]): StandSlip[] {
  const { setups } = problem.model.request;
  const seen = new Set<number>();
  return pictures.flatMap((setup): StandSlip[] => {
    const column = levelOf(setups[setup])?.column;
    if (column === undefined || seen.has(column)) return [];
    seen.add(column);
    const off = Math.abs(best.u[problem.unknowns.drift.start + column]);
    return off > leanFrom ? [{ kind: 'stand-lean', setup, turnRad: 0 }] : [];
  });
}

/** By the level's amplitude alone. */
export function leanOf({ problem, best }: Fitted, setup: number): number {
  const level = levelOf(problem.model.request.setups[setup])!;
  return best.z[problem.unknowns.drift.start + level.column] / level.halfM;
}

/** A place's distance from the line through the hold stays; the line it is square to turns. */
export function turnedBack(
  request: PreparedRequest,
  level: PreparedCurve['level'],
  turnRad: number,
): PreparedRequest {
  return {
    ...request,
    driftSigmas: request.driftSigmas.map((sigma, k) =>
      k === level.column ? Math.max(sigma, leanSigmaRad * level.halfM) : sigma,
    ),
    setups: request.setups.map((setup) =>
      setup.kind === 'span' || setup.curve?.level.column !== level.column
        ? setup
        : {
            ...setup,
            curve: { ...setup.curve, level: { ...level, turnedRad: (level.turnedRad ?? 0) + turnRad } },
            tests: setup.tests.map((test) => ({
              ...test,
              readings: test.readings.map((reading) => ({
                ...reading,
                squareToRad: (reading.squareToRad ?? 0) - turnRad,
              })),
            })),
          },
    ),
  };
}

function levelOf(setup: PreparedSetup): PreparedCurve['level'] | undefined {
  return setup.kind === 'span' ? undefined : setup.curve?.level;
}
