/**
 * Finds what does not belong, one thing after the other: weigh every doubt at the present state, fit again with
 * the strongest of every kind freed, keep the one that the readings speak for most, and look again. What is kept no
 * longer counts: a reading is left out, a flag, tilt, weight or edge carried as an unknown amplitude.
 *
 * Evidence for a doubt is 2 ln of its Bayes factor: the fall of 2 Φ, its determinants and the blank's own roughness
 * included, in units of the scatter that the likeliest explanation leaves, less what an amplitude of any size has
 * against it (slip-sizes.ts). What comes within `almost` of the best is named beside it: the readings cannot tell
 * the two apart. Limits are set on simulated clean benches (docs/theory-stiffness.md), so that about one or two of
 * a hundred raise an alarm.
 */
import type { Explained, Fitted, Named, Refit, StandSlip } from './explanation.ts';
import { impossibleReadings } from './impossible-readings.ts';
import type { MostProbable } from './most-probable.ts';
import { robustNoiseFactor } from './noise.ts';
import type { PreparedRequest } from './prepared-request.ts';
import { standTrials } from './stand-trials.ts';
import { doubtTrials, slipTrials, swapTrials, type Trial, type TrialOptions, testTrials } from './trials.ts';

interface ResolveOptions extends TrialOptions {
  /** Least evidence that raises each kind; `edge` in a whole set-up, `testEdge` in one test of it. */
  limits: Record<Trial['kind'] | 'testEdge', number>;
  /** Things named at most, beside readings that cannot be. */
  most: number;
  /** No new round is begun after so many steps of search. */
  steps: number;
  almost: number;
}
const resolveDefaults: ResolveOptions = {
  limits: {
    reading: 11,
    flag: 5.5,
    slip: 6,
    load: 6,
    stations: 6,
    edge: 4,
    testEdge: 8,
    mass: 7,
    stretch: 15,
    sway: 8,
    swap: 15,
    test: 7,
    bump: 8,
    'stand-slip': 8,
    'stand-weight': 8,
    'stand-swap': 15,
    'stand-lean': 4,
    'stand-other': 15,
  },
  most: 6,
  steps: 300,
  almost: 4,
  leastGain: 4.5,
  perKind: 3,
  loadFarOff: 0.2,
  perReadingLeftOut: 6,
};

export function resolveDoubts(
  request: PreparedRequest,
  refit: Refit,
  before?: Fitted,
  options: ResolveOptions = resolveDefaults,
): { explained: Explained; fitted: Fitted } {
  let explained: Explained = { request, named: impossibleReadings(request) };
  let fitted = firstFit(explained, refit, before);
  let steps = 0;
  const counted: Refit = (tried, from, giveUpAt) => {
    const result = refit(tried, from, giveUpAt);
    steps += result.best.iterations;
    return result;
  };
  for (let round = 0; round < options.most && steps < options.steps; round++) {
    const next = nextExplanation(explained, fitted, counted, options);
    if (!next) break;
    explained = next.explained;
    fitted = next.fitted;
  }
  return { explained, fitted };
}

/** `before` may be that very fit, or one near enough to start from. */
function firstFit(explained: Explained, refit: Refit, before: Fitted | undefined): Fitted {
  const isThis = before?.problem.model.request === explained.request && explained.named.length === 0;
  if (before && isThis) return before;
  return refit(explained, before?.best.hopeless ? undefined : before);
}

function nextExplanation(
  explained: Explained,
  fitted: Fitted,
  refitAnew: Refit,
  options: ResolveOptions,
): Pick<Trial, 'explained' | 'fitted'> | undefined {
  const refit = withoutTestsOnce(refitAnew);
  if (fitted.best.hopeless) return wayOut(explained, fitted, refit, options);
  const noise = robustNoiseFactor(fitted.problem, fitted.best);
  const { trials: ofStand, giveUpAt } = standTrials(explained, fitted, refit);
  const refitUnder: Refit = (next, from) => refit(next, from, giveUpAt);
  const trials = swapTrials(explained, fitted, refit);
  trials.push(...ofStand, ...doubtTrials(explained, fitted, refitUnder, options));
  const unmet = trials.every((trial) => missesGrossly(trial.fitted.best, noise));
  if (unmet && missesGrossly(fitted.best, noise)) {
    trials.push(...testTrials(explained, fitted, refit, options));
  }
  return likeliest(trials, options);
}

/** Leaving out whole tests is asked for by several trials of a round: each is fitted once, unless in vain. */
function withoutTestsOnce(refit: Refit): Refit {
  const known = new Map<string, Fitted>();
  return (explained, from, giveUpAt) => {
    const last = explained.named.at(-1);
    if (last?.kind !== 'test') return refit(explained, from, giveUpAt);
    const key = explained.named.map((one) => (one.kind === 'test' ? `${one.setup}/${one.test}` : '')).join();
    const fitted = known.get(key) ?? refit(explained, from, giveUpAt);
    if (!fitted.best.hopeless) known.set(key, fitted);
    return fitted;
  };
}

/** With the runner-up beside it, where there is one. */
function likeliest(trials: readonly Trial[], options: ResolveOptions): Trial | undefined {
  if (trials.length === 0) return undefined;
  const clearest = trials.reduce((a, b) => (b.fall / b.noise ** 2 > a.fall / a.noise ** 2 ? b : a));
  const judged = trials
    .map((trial) => ({ trial, evidence: trial.fall / clearest.noise ** 2 + trial.size }))
    .sort((a, b) => b.evidence - a.evidence);
  const holding = judged.filter(({ trial, evidence }) => evidence > limitOf(trial, options));
  if (holding.length === 0) return undefined;
  const [best, ...others] = holding;
  const runnerUp = others.find(
    ({ trial, evidence }) => evidence > best.evidence - options.almost && !isSamePlace(trial, best.trial),
  );
  return withAlternative(best.trial, runnerUp?.trial);
}

/** Where a clamp, a weight or stations touch one reading alone, they are that reading by another name. */
function limitOf({ kind, suspicion }: Trial, { limits }: ResolveOptions): number {
  const isOne = suspicion?.doubt.pattern.length === 1;
  if (isOne && (kind === 'slip' || kind === 'load' || kind === 'stations')) return limits.reading;
  return kind === 'edge' && suspicion && suspicion.doubt.test >= 0 ? limits.testEdge : limits[kind];
}

function isSamePlace({ kind, suspicion: a }: Trial, { kind: other, suspicion: b }: Trial): boolean {
  if (!a || !b) return false;
  return kind === other && a?.doubt.data[0] === b?.doubt.data[0] && a?.doubt.test === b?.doubt.test;
}

function withAlternative(trial: Trial, runnerUp: Trial | undefined): Trial {
  const { explained } = trial;
  const last = explained.named[explained.named.length - 1];
  if (last.kind === 'stand') return withOtherWeight(trial, last.slip, runnerUp);
  if (last.kind !== 'doubt' || !runnerUp?.suspicion) return trial;
  const named = [...explained.named.slice(0, -1), { ...last, alternatives: [runnerUp.suspicion] }];
  return { ...trial, explained: { ...explained, named } };
}

/** Two weights tell each other's share: which of them is wrong the pictures may not know. */
function withOtherWeight(trial: Trial, slip: StandSlip, runnerUp: Trial | undefined): Trial {
  const other = runnerUp?.explained.named.at(-1);
  if (slip.kind !== 'stand-weight' || other?.kind !== 'stand' || other.slip.kind !== 'stand-weight')
    return trial;
  const { explained } = trial;
  const named: Named = { kind: 'stand', slip: { ...slip, or: other.slip.setup } };
  return { ...trial, explained: { ...explained, named: [...explained.named.slice(0, -1), named] } };
}

/**
 * Where the readings are met nowhere, patterns of errors about that state mean little: swapped loads, a clamp that
 * slipped and whole tests left out are tried.
 */
function wayOut(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  options: ResolveOptions,
): Trial | undefined {
  const { trials: ofStand, giveUpAt } = standTrials(explained, fitted, refit);
  const refitUnder: Refit = (next, from) => refit(next, from, giveUpAt);
  const trials = [
    ...swapTrials(explained, fitted, refit),
    ...ofStand,
    ...slipTrials(explained, fitted, refit),
    ...testTrials(explained, fitted, refitUnder, options),
  ];
  return likeliest(trials, options);
}

function missesGrossly({ misfit, hopeless }: MostProbable, noise: number): boolean {
  const square = misfit.reduce((sum, e) => sum + e * e, 0);
  return hopeless || square > 3 * misfit.length * noise ** 2;
}
