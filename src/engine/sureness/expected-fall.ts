/**
 * By how much a reading is to be expected to lower the worst: blanks are drawn from what fits, the reading is taken on
 * each with its noise and tilt, the likeliest blank moves as it tells, ξ̂ = Wᵀ (W Wᵀ + t tᵀ + Σ)⁻¹ r, the marks follow along
 * their slopes, and the old and the new ones are read on the drawn blank (value of sample information by drawing). The
 * mean cost of keeping the marks times the share of their variance that the reading takes would promise several times too
 * much: what costs most on the drawn blanks are places that the readings on offer do not show (docs/calibration.md).
 *
 * Left out: kept-free zones and other rules of placing, and that marks placed anew turn corners.
 */
import { freeRod } from '../bench/free-rod.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { Ladder } from '../layout/ladder-request.ts';
import { solveLower, solveUpper } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import { drawStates } from '../stiffness/draw-states.ts';
import { rodOf, spreadAt } from '../stiffness/posterior.ts';
import type { MarksQuestion } from './marks-over.ts';
import { readingScatter } from './reading-scatter.ts';
import type { SeenReading } from './readings-seen.ts';

/** How the marks follow: per direction, one slope per mark, true as far as `chord` standard deviations. */
export interface Follow {
  directions: readonly Float64Array[];
  slopes: readonly number[][];
  chord: number;
}

/** As a share of the worst; 0 where it would rise, or where no drawn blank bends. */
export function expectedFall(
  question: MarksQuestion,
  follow: Follow,
  readings: readonly SeenReading[],
  { drawn, seed }: { drawn: number; seed: number },
): number {
  const told = teller(readings, seededNormal(seededRandom(seed)));
  const falls = drawStates(question.posterior.drawing, drawn, seed).flatMap((state) => {
    const marks = following(question.proposedFromTipM, follow, told(spreadAt(question.posterior, state)));
    const ladder = ladderOn(question, state);
    const [before, after] = [worstOn(ladder, question.proposedFromTipM), worstOn(ladder, marks)];
    return before && after ? [Math.log(before / after)] : [];
  });
  if (falls.length === 0) return 0;
  return Math.max(0, 1 - Math.exp(-falls.reduce((sum, fall) => sum + fall, 0) / falls.length));
}

/** The likeliest ξ once the readings were taken on the blank at ξ. */
function teller(
  readings: readonly SeenReading[],
  normal: () => number,
): (spread: Float64Array) => Float64Array {
  const scatter = readingScatter(readings);
  const n = readings.length;
  return (spread) => {
    const tilt = normal();
    const shown = Float64Array.from(
      readings,
      ({ bySpread, byTiltM, sigmaM }) => dot(bySpread, spread) + byTiltM * tilt + sigmaM * normal(),
    );
    solveLower(scatter, n, shown, shown);
    solveUpper(scatter, n, shown, shown);
    return spread.map((_, k) => readings.reduce((sum, { bySpread }, i) => sum + bySpread[k] * shown[i], 0));
  };
}

function following(
  fromTipM: readonly number[],
  { directions, slopes, chord }: Follow,
  told: Float64Array,
): number[] {
  const along = directions.map((direction) => Math.max(-chord, Math.min(chord, dot(direction, told))));
  return fromTipM.map((at, mark) => along.reduce((sum, by, k) => sum + by * slopes[k][mark], at));
}

function ladderOn({ posterior, request }: MarksQuestion, state: Float64Array): Ladder {
  const { stiffness, massPerLength = [], restCurvature } = rodOf(posterior, state);
  const rod = freeRod({ stiffness, massPerLength, restCurvature }, request.rod.lengthM);
  return makeLadder({ ...request, rod });
}

/** Undefined for marks that have passed each other, and where some load finds no bend. */
function worstOn(ladder: Ladder, fromTipM: readonly number[]): number | undefined {
  if (fromTipM.some((at, mark) => mark > 0 && at <= fromTipM[mark - 1])) return undefined;
  const reading = readLadder(ladder, fromTipM);
  return reading.status === 'not-converged' ? undefined : reading.worst;
}
