/**
 * Finds what does not belong, one thing after the other: weigh every doubt at the present state, fit again with
 * the strongest ones freed, keep the one that explains most beyond what chance would, and look again. What is
 * kept no longer counts: a reading is left out, a flag, tilt, weight or edge carried as an unknown amplitude.
 *
 * Limits are on the fall of 2 Φ (χ² of one degree of freedom, the larger the more such doubts a bench holds):
 * set so that 100 simulated clean benches raise about one false alarm.
 */
import { commonSigmaM } from './bench-model.ts';
import { type Doubt, type DoubtKind, possibleDoubts } from './doubts.ts';
import type { Explained, Fitted, Named, Refit } from './explanation.ts';
import type { MostProbable } from './most-probable.ts';
import { robustNoiseFactor } from './noise.ts';
import type { PreparedRequest, PreparedSetup } from './prepared.ts';
import { weighDoubts } from './suspicion.ts';
import { contraryPairs, swapLoads } from './swapped-loads.ts';

export interface ResolveOptions {
  /** Least fall of 2 Φ that raises each kind. */
  limits: Record<DoubtKind | 'swap' | 'test', number>;
  /** Things named at most, beside readings that cannot be. */
  most: number;
  /** No new round is begun after so many steps of search. */
  steps: number;
  /** Doubts fitted again in each round. */
  tries: number;
  /** A kind further up this list is preferred where two explain almost equally well. */
  preference: readonly (DoubtKind | 'swap' | 'test')[];
  almost: number;
  /** A weight further off than this share leaves its test out. */
  loadFarOff: number;
}
export const resolveDefaults: ResolveOptions = {
  limits: {
    reading: 15,
    flag: 14,
    slip: 12,
    load: 12,
    stations: 12,
    edge: 10,
    mass: 13,
    stretch: 15,
    swap: 15,
    test: 25,
  },
  most: 6,
  steps: 200,
  tries: 4,
  preference: ['swap', 'reading', 'stretch', 'flag', 'slip', 'edge', 'load', 'stations', 'mass', 'test'],
  almost: 3,
  loadFarOff: 0.2,
};

export function resolveDoubts(
  request: PreparedRequest,
  refit: Refit,
  options: ResolveOptions = resolveDefaults,
): { explained: Explained; fitted: Fitted } {
  let explained: Explained = { request, named: impossibleReadings(request) };
  let fitted = refit(explained);
  let steps = 0;
  const counted: Refit = (tried, from) => {
    const result = refit(tried, from);
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

interface Trial {
  kind: DoubtKind | 'swap' | 'test';
  explained: Explained;
  fitted: Fitted;
  /** Fall of 2 Φ in units of the noise, less the kind's limit. */
  beyond: number;
}

function nextExplanation(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  options: ResolveOptions,
): Trial | undefined {
  if (fitted.best.hopeless) return wayOut(explained, fitted, refit, options);
  const noise = robustNoiseFactor(fitted.problem, fitted.best);
  const trials = swapTrials(explained, fitted, refit, noise, options);
  trials.push(...doubtTrials(explained, fitted, refit, noise, options));
  const unmet = trials.every((trial) => missesGrossly(trial.fitted.best, noise));
  if (unmet && missesGrossly(fitted.best, noise)) {
    trials.push(...testTrials(explained, fitted, refit, noise, options));
  }
  const holding = trials.filter(({ beyond }) => beyond > 0);
  if (holding.length === 0) return undefined;
  const strongest = Math.max(...holding.map(({ beyond, kind }) => beyond + options.limits[kind]));
  const equal = holding.filter(
    ({ beyond, kind }) => beyond + options.limits[kind] > strongest - options.almost,
  );
  return equal.sort((a, b) => options.preference.indexOf(a.kind) - options.preference.indexOf(b.kind))[0];
}

/**
 * Where the readings are met nowhere, patterns of errors about that state mean little, and neither does its scatter:
 * swapped loads, a clamp that slipped and whole tests left out are tried, each judged by the scatter that it leaves.
 */
function wayOut(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  options: ResolveOptions,
): Trial | undefined {
  const { problem, best } = fitted;
  const slips = possibleDoubts(problem.model, problem.unknowns, best)
    .filter((doubt) => doubt.kind === 'slip' && isNew(doubt, explained))
    .map((doubt): Trial => {
      const named: Named = {
        kind: 'doubt',
        suspicion: { doubt, gain: Number.POSITIVE_INFINITY, amplitude: 0 },
        alternatives: [],
      };
      const next = { ...explained, named: [...explained.named, named] };
      return trialOf('slip', next, fitted, refit(next), 1, options);
    });
  const trials = [
    ...swapTrials(explained, fitted, refit, 1, options),
    ...slips,
    ...testTrials(explained, fitted, refit, 1, options),
  ].map((trial) => {
    const left = robustNoiseFactor(trial.fitted.problem, trial.fitted.best);
    const limit = options.limits[trial.kind];
    return { ...trial, beyond: (trial.beyond + limit) / left ** 2 - limit };
  });
  return trials.filter(({ beyond }) => beyond > 0).sort((a, b) => b.beyond - a.beyond)[0];
}

function doubtTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  noise: number,
  options: ResolveOptions,
): Trial[] {
  const { problem, best } = fitted;
  const scale = 1 / noise ** 2;
  const weighed = weighDoubts(possibleDoubts(problem.model, problem.unknowns, best), problem, best);
  const strong = weighed
    .filter(({ doubt, gain }) => gain * scale > options.limits[doubt.kind] && isNew(doubt, explained))
    .slice(0, options.tries);
  return strong.map((suspicion) => {
    const { doubt, gain } = suspicion;
    const alternatives = weighed.filter(
      (other) =>
        other.doubt.kind !== doubt.kind && other.gain > gain - options.almost && touches(other.doubt, doubt),
    );
    // the pattern of a wrong weight is linear: far off, the test is better left out
    const named: Named =
      doubt.kind === 'load' && Math.abs(suspicion.amplitude) > options.loadFarOff
        ? { kind: 'test', setup: doubt.setup, test: doubt.test }
        : { kind: 'doubt', suspicion, alternatives };
    const next = { ...explained, named: [...explained.named, named] };
    return trialOf(doubt.kind, next, fitted, refit(next, fitted), scale, options);
  });
}

function trialOf(
  kind: Trial['kind'],
  explained: Explained,
  before: Fitted,
  after: Fitted,
  scale: number,
  options: ResolveOptions,
): Trial {
  const fall = 2 * (before.score - after.score) * scale;
  return {
    kind,
    explained,
    fitted: after,
    beyond: fall - options.limits[kind],
  };
}

function isNew(doubt: Doubt, { named }: Explained): boolean {
  return named.every((other) => {
    if (other.kind === 'swap') return true;
    if (other.kind === 'test') return doubt.setup !== other.setup || doubt.test !== other.test;
    const known = other.suspicion.doubt;
    return !(known.kind === doubt.kind && known.data[0] === doubt.data[0] && known.test === doubt.test);
  });
}

function touches(a: Doubt, b: Doubt): boolean {
  return a.data.some((d) => b.data.includes(d));
}

function swapTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  noise: number,
  options: ResolveOptions,
): Trial[] {
  return contraryPairs(explained.request).map((pair) => {
    const next: Explained = {
      request: swapLoads(explained.request, pair),
      named: [...explained.named, { kind: 'swap', pair }],
    };
    return trialOf('swap', next, fitted, refit(next), 1 / noise ** 2, options);
  });
}

/** Last resort where nothing in particular explains a gross misfit: a whole test left out. */
function testTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  noise: number,
  options: ResolveOptions,
): Trial[] {
  const { hopeless } = fitted.best;
  if (explained.request.setups.reduce((sum, { tests }) => sum + tests.length, 0) < 2) return [];
  return explained.request.setups.flatMap((setup, s) =>
    setup.tests.map((_, t) => {
      const named: Named = { kind: 'test', setup: s, test: t };
      const next = { ...explained, named: [...explained.named, named] };
      const from = hopeless ? undefined : fitted;
      return trialOf('test', next, fitted, refit(next, from), 1 / noise ** 2, options);
    }),
  );
}

function missesGrossly({ misfit, hopeless }: MostProbable, noise: number): boolean {
  const square = misfit.reduce((sum, e) => sum + e * e, 0);
  return hopeless || square > 3 * misfit.length * noise ** 2;
}

/** A point cannot be further from the line through the clamp than along the blank; a tenth is left for error. */
function impossibleReadings({ blank, setups }: PreparedRequest): Named[] {
  let datum = 0;
  return setups.flatMap((setup, s) => {
    const first = datum;
    datum += dataOf(setup);
    if (setup.kind === 'span' || setup.curve) return [];
    let d = first - 1;
    return setup.tests.flatMap(({ readings, sigmaM = commonSigmaM }, t) =>
      readings.flatMap(({ fromTipM, dropM }): Named[] => {
        d++;
        const reach = Math.max(0, (setup.clampFromTipM ?? blank.lengthM) - fromTipM);
        return Math.abs(dropM) <= 1.1 * reach + 6 * sigmaM ? [] : [impossible(d, s, t, dropM)];
      }),
    );
  });
}

function dataOf(setup: PreparedSetup): number {
  if (setup.kind === 'span') return setup.tests.length;
  const readings = setup.tests.reduce((sum, test) => sum + test.readings.length, 0);
  return setup.curve ? readings + 1 : readings;
}

function impossible(datum: number, setup: number, test: number, dropM: number): Named {
  const pattern = [{ datum, amount: 1 }];
  const doubt: Doubt = { kind: 'reading', data: [datum], setup, test, pattern, sigma: 1 };
  const suspicion = { doubt, gain: Number.POSITIVE_INFINITY, amplitude: dropM };
  return { kind: 'doubt', suspicion, alternatives: [] };
}
