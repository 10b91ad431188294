/** One thing more held to have gone wrong, and the blank fitted anew under it. */
import { type Doubt, possibleDoubts } from './doubts.ts';
import {
  type Explained,
  type Fitted,
  isCarried,
  type Named,
  type Refit,
  type StandSlip,
} from './explanation.ts';
import type { DoubtKind } from './fit-kinds.ts';
import { noiseFactor, robustNoiseFactor } from './noise.ts';
import { sizeCounts } from './slip-sizes.ts';
import { type Suspicion, weighDoubts } from './suspicion.ts';
import { contraryPairs, swapLoads } from './swapped-loads.ts';

export interface Trial {
  kind: DoubtKind | 'swap' | 'test' | 'stand-other' | StandSlip['kind'];
  explained: Explained;
  fitted: Fitted;
  suspicion?: Suspicion;
  /** Fall of 2 Φ, in units of the stated ±. */
  fall: number;
  /** What its amplitude, or that it can explain anything, takes off that: slip-sizes.ts. */
  size: number;
  /** How much the readings scatter under it. */
  noise: number;
}
export interface TrialOptions {
  /** A doubt that would gain less to first order is not fitted. */
  leastGain: number;
  /** So many of each kind are fitted. */
  perKind: number;
  /** A weight further off than this share leaves its test out. */
  loadFarOff: number;
  /** What leaving out a whole test costs per reading of it. */
  perReadingLeftOut: number;
}

export function doubtTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  options: TrialOptions,
): Trial[] {
  const { problem, best } = fitted;
  const weighed = weighDoubts(possibleDoubts(problem.model, problem.unknowns, best), problem, best);
  const counts = new Map<DoubtKind, number>();
  const worthwhile = weighed.filter(({ doubt, gain }) => {
    if (gain < options.leastGain || !isNew(doubt, explained)) return false;
    const before = counts.get(doubt.kind) ?? 0;
    counts.set(doubt.kind, before + 1);
    return before < options.perKind;
  });
  return worthwhile.map((suspicion): Trial => {
    const { doubt } = suspicion;
    // the pattern of a wrong weight is linear: far off, the test is better left out
    const named: Named =
      doubt.kind === 'load' && Math.abs(suspicion.amplitude) > options.loadFarOff
        ? { kind: 'test', setup: doubt.setup, test: doubt.test }
        : { kind: 'doubt', suspicion, alternatives: [] };
    const next = { ...explained, named: [...explained.named, named] };
    const after = refit(next, fitted);
    const trial = trialOf(doubt.kind, next, fitted, after);
    if (named.kind === 'test') return { ...trial, kind: 'test', size: sizeOfTest(named, after, options) };
    const { size, amplitude } = sizeOf(doubt, after);
    return { ...trial, size, suspicion: { ...suspicion, amplitude } };
  });
}

/** The amplitude as fitted and what it counts for; the doubt named last is the last unknown. */
function sizeOf(doubt: Doubt, { problem, best }: Fitted): { size: number; amplitude: number } {
  const { size: n } = problem.unknowns;
  if (isCarried(doubt)) {
    const amplitude = best.z[n - 1];
    const size = sizeCounts(doubt.kind, amplitude, doubt.sigma / best.factor[n * n - 1]);
    return { size: size + best.u[n - 1] ** 2, amplitude };
  }
  const [d] = doubt.data;
  const { kind, value, sigma } = problem.model.data[d];
  const amplitude = value - best.prediction.value[d];
  const unit = kind === 'mass' ? Math.abs(value) : 1;
  return { size: sizeCounts(doubt.kind, amplitude / unit, sigma / unit), amplitude };
}

function sizeOfTest(
  { setup, test }: { setup: number; test: number },
  { problem }: Fitted,
  { perReadingLeftOut }: TrialOptions,
): number {
  const readings = problem.model.data.filter((datum) => datum.setup === setup && datum.test === test);
  return -perReadingLeftOut * readings.length;
}

export function trialOf(kind: Trial['kind'], explained: Explained, before: Fitted, fitted: Fitted): Trial {
  const { problem, best } = fitted;
  // what a single gross error left behind widens the mean of squares, few readings the median
  const noise = Math.min(robustNoiseFactor(problem, best), noiseFactor(problem, best));
  return { kind, explained, fitted, fall: 2 * (before.score - fitted.score), size: 0, noise };
}

export function isNew(doubt: Doubt, { named }: Explained): boolean {
  return named.every((other) => {
    if (other.kind === 'swap' || other.kind === 'stand') return true;
    if (other.kind === 'test') return doubt.setup !== other.setup || doubt.test !== other.test;
    const known = other.suspicion.doubt;
    return !(known.kind === doubt.kind && known.data[0] === doubt.data[0] && known.test === doubt.test);
  });
}

export function swapTrials(explained: Explained, fitted: Fitted, refit: Refit): Trial[] {
  return contraryPairs(explained.request).map((pair) => {
    const next: Explained = {
      request: swapLoads(explained.request, pair),
      named: [...explained.named, { kind: 'swap', pair }],
    };
    return trialOf('swap', next, fitted, refit(next));
  });
}

/** Last resort where nothing in particular explains a gross misfit: a whole test left out. */
export function testTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  options: TrialOptions,
): Trial[] {
  const { hopeless } = fitted.best;
  if (explained.request.setups.reduce((sum, { tests }) => sum + tests.length, 0) < 2) return [];
  return explained.request.setups.flatMap((setup, s) =>
    setup.tests.map((_, t) => {
      const named = { kind: 'test' as const, setup: s, test: t };
      const next = { ...explained, named: [...explained.named, named] };
      const after = refit(next, hopeless ? undefined : fitted);
      return { ...trialOf('test', next, fitted, after), size: sizeOfTest(named, after, options) };
    }),
  );
}

/** Every clamp that may have slipped, fitted from afar. */
export function slipTrials(explained: Explained, fitted: Fitted, refit: Refit): Trial[] {
  const { problem, best } = fitted;
  return possibleDoubts(problem.model, problem.unknowns, best)
    .filter((doubt) => doubt.kind === 'slip' && isNew(doubt, explained))
    .map((doubt) => {
      const suspicion = { doubt, gain: Number.POSITIVE_INFINITY, amplitude: 0 };
      const named: Named = { kind: 'doubt', suspicion, alternatives: [] };
      const next = { ...explained, named: [...explained.named, named] };
      const after = refit(next);
      const { size, amplitude } = sizeOf(doubt, after);
      return { ...trialOf('slip', next, fitted, after), size, suspicion: { ...suspicion, amplitude } };
    });
}
