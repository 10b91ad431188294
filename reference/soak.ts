/**
 * Many random rods: every bend converged or with a named reason, finite, in bounded steps; every fiftieth followed
 * in fine load steps, every tenth with a line that rubs and lies on the blank. Run by `npm run soak`.
 */
import { type BendRequest, bend } from '../src/engine/bend/bend.ts';
import { type Harshness, randomBendRequest } from './population.ts';
import { followedInFineSteps, judgeBend } from './soak-judge.ts';

export interface SoakPlan {
  firstSeed: number;
  rods: number;
  onProgress(done: number): void;
}
export interface SoakResult {
  harshness: Harshness;
  rods: number;
  byStatus: Record<string, number>;
  realLine: Record<string, number>;
  followedFinely: number;
  mostIterations: { iterations: number; seed: number };
  faults: string[];
}

/** Seven in ten are rods of the bench, the rest harsh. */
export function soak({ firstSeed, rods, onProgress }: SoakPlan): SoakResult[] {
  const bench = Math.round(0.7 * rods);
  let done = 0;
  return (
    [
      ['bench', bench],
      ['harsh', rods - bench],
    ] as const
  ).map(([harshness, count]) => {
    const result: SoakResult = {
      harshness,
      rods: count,
      byStatus: {},
      realLine: {},
      followedFinely: 0,
      mostIterations: { iterations: 0, seed: 0 },
      faults: [],
    };
    for (let seed = firstSeed; seed < firstSeed + count; seed++) {
      judgeSeed(seed, harshness, result);
      done++;
      if (done % 1000 === 0) onProgress(done);
    }
    return result;
  });
}

function judgeSeed(seed: number, harshness: Harshness, result: SoakResult): void {
  const request = randomBendRequest(seed, harshness);
  const { status, iterations, fault } = judgeBend(request);
  result.byStatus[status] = (result.byStatus[status] ?? 0) + 1;
  if (iterations > result.mostIterations.iterations) result.mostIterations = { iterations, seed };
  if (fault) result.faults.push(`${harshness} ${seed}: ${fault}`);
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
  if (!numbers.every(Number.isFinite))
    result.faults.push(`${result.harshness} ${seed}: real line, not finite`);
  if (answer.status !== 'converged' && !answer.reason) {
    result.faults.push(`${result.harshness} ${seed}: real line, ${answer.status} without a reason`);
  }
}
