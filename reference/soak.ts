/**
 * Many random rods: every bend converged or with a named reason, finite, in bounded steps; every fiftieth followed
 * in fine load steps, every tenth with a line that rubs and lies on the blank. Run by `npm run soak`.
 */
import { type BendRequest, bend } from '../src/engine/bend/bend.ts';
import { randomAbsurdRequest } from './absurd-requests.ts';
import { type Harshness, randomBendRequest } from './population.ts';
import { followedInFineSteps, judgeBend } from './soak-judge.ts';

export interface SoakPlan {
  firstSeed: number;
  rods: number;
  onProgress(done: number): void;
}
export interface SoakResult {
  rodsOf: Harshness | 'absurd';
  rods: number;
  byStatus: Record<string, number>;
  realLine: Record<string, number>;
  followedFinely: number;
  mostIterations: { iterations: number; seed: number };
  faults: string[];
}

/** In a hundred, seventy are rods of the bench, twenty-eight harsh, two absurd. */
export function soak({ firstSeed, rods, onProgress }: SoakPlan): SoakResult[] {
  const bench = Math.round(0.7 * rods);
  const absurd = Math.round(0.02 * rods);
  let done = 0;
  const counts = { bench, harsh: rods - bench - absurd, absurd };
  return (['bench', 'harsh', 'absurd'] as const).map((rodsOf) => {
    const result = emptyResult(rodsOf, counts[rodsOf]);
    for (let seed = firstSeed; seed < firstSeed + result.rods; seed++) {
      if (rodsOf === 'absurd') judge(seed, randomAbsurdRequest(seed), result);
      else judgeSeed(seed, rodsOf, result);
      done++;
      if (done % 1000 === 0) onProgress(done);
    }
    return result;
  });
}

function emptyResult(rodsOf: SoakResult['rodsOf'], rods: number): SoakResult {
  return {
    rodsOf,
    rods,
    byStatus: {},
    realLine: {},
    followedFinely: 0,
    mostIterations: { iterations: 0, seed: 0 },
    faults: [],
  };
}

function judge(seed: number, request: BendRequest, result: SoakResult): void {
  const { status, iterations, fault } = judgeBend(request);
  result.byStatus[status] = (result.byStatus[status] ?? 0) + 1;
  if (iterations > result.mostIterations.iterations) result.mostIterations = { iterations, seed };
  if (fault) result.faults.push(`${result.rodsOf} ${seed}: ${fault}`);
}

function judgeSeed(seed: number, harshness: Harshness, result: SoakResult): void {
  const request = randomBendRequest(seed, harshness);
  judge(seed, request, result);
  if (seed % 50 === 0) {
    result.followedFinely++;
    const apartRad = followedInFineSteps(request);
    if (apartRad > 1e-6)
      result.faults.push(`${harshness} ${seed}: ${apartRad} rad from where fine load steps lead`);
  }
  if (seed % 10 === 0 && request.load.line) judgeRealLine(seed, request, result);
}

function judgeRealLine(seed: number, request: BendRequest, result: SoakResult): void {
  const direction = seed % 20 === 0 ? 'in' : 'out';
  const answer = bend({
    ...request,
    friction: { coefficient: 0.25, direction },
    contact: {
      diameters: [
        { fromTipM: 0, outsideM: 0.002 },
        { fromTipM: request.rod.lengthM, outsideM: 0.008 },
      ],
    },
  });
  result.realLine[answer.status] = (result.realLine[answer.status] ?? 0) + 1;
  const numbers = answer.points.flatMap((point) => [point.xM, point.yM, point.angleRad, point.curvaturePerM]);
  if (!numbers.every(Number.isFinite)) result.faults.push(`${result.rodsOf} ${seed}: real line, not finite`);
  if (answer.status !== 'converged' && !answer.reason) {
    result.faults.push(`${result.rodsOf} ${seed}: real line, ${answer.status} without a reason`);
  }
}
