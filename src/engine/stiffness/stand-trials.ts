/**
 * What can have gone wrong between pictures of one stand, each as the request it would have been under: the camera was
 * bumped, so that one picture shows the wall displaced as a whole; the clamp slipped before a picture; two pictures
 * carry each other's weights; a weight is not as stated; the marks hang off level; one shows another blank. Weighed by
 * their evidence like every other doubt (resolve.ts).
 */
import type { Doubt } from './doubts.ts';
import type { Explained, Fitted, Refit, StandSlip } from './explanation.ts';
import { robustNoiseFactor } from './noise.ts';
import { otherBlankTrials } from './other-blank.ts';
import type { PreparedClamp, PreparedRequest, PreparedSetup } from './prepared-request.ts';
import { sizeCounts } from './slip-sizes.ts';
import { weighDoubts } from './suspicion.ts';
import { type Trial, trialOf } from './trials.ts';
import { leanOf, leanSigmaRad, leansOf, turnedBack } from './wall-lean.ts';

/**
 * How far a bumped camera displaces its picture, m at the edge, by the order of its own drifts (curve-stand.ts): a small
 * turn shifts and turns it, and leans it a little; scale, stretch, shear and lens stay. Judgement.
 */
const bumpSigmasM = [0.03, 0.03, 0.03, 0.002, 0.001, 0.001, 0.006, 0.006];
/** Own drifts of clean pictures, squares of standardised amplitudes, stay below this in sum. */
const strainLimit = 6;

/** And above what Φ no other explanation need be sought (other-blank.ts). */
export function standTrials(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
): { trials: Trial[]; giveUpAt?: number } {
  const { setups } = explained.request;
  const pictures = setups.flatMap((setup, s) => (isOfStand(setup) ? [s] : []));
  if (pictures.length < 2) return { trials: [] };
  const swaps = swapsOf(explained.request, pictures);
  const isOdd = swaps.length > 0 || isStrained(fitted, pictures);
  const slips = [
    ...swaps,
    ...leansOf(fitted, pictures),
    ...(isOdd ? pictures.flatMap((s) => slipsAt(setups, s)) : []),
  ];
  const { trials: others, giveUpAt } = isOdd
    ? otherBlankTrials(explained, fitted, refit, pictures.toReversed())
    : { trials: [], giveUpAt: undefined };
  // none of these is given up: from so far off a wrong weight may need forty steps
  const trials = slips
    .filter((slip) => !explained.named.some((other) => other.kind === 'stand' && isSame(other.slip, slip)))
    .map((slip) => {
      if (slip.kind === 'stand-weight') return weightTrial(explained, fitted, refit, slip.setup);
      if (slip.kind === 'stand-lean') return leanTrial(explained, fitted, refit, slip.setup);
      return trialUnder(explained, fitted, refit, slip);
    });
  return { trials: [...trials, ...others], giveUpAt };
}

function trialUnder(
  explained: Explained,
  fitted: Fitted,
  refit: Refit,
  slip: StandSlip,
  from?: Fitted,
): Trial {
  const next: Explained = {
    request: underSlip(explained.request, slip),
    named: [...explained.named, { kind: 'stand', slip }],
  };
  const near = slip.kind === 'stand-swap' ? undefined : (from ?? fitted);
  return trialOf(slip.kind, next, fitted, refit(next, near));
}

/** The weight that the picture bends as under, by a few secants of the first-order estimate. */
function weightTrial(explained: Explained, fitted: Fitted, refit: Refit, setup: number): Trial {
  let factor = 1;
  let from = fitted;
  let trial: Trial | undefined;
  let sigma = 0;
  for (let step = 0; step < 3; step++) {
    const { amplitude, sigma: own } = loadOff(from, setup);
    if (trial && Math.abs(amplitude) < 0.01) break;
    sigma = own;
    factor = Math.min(2.5, Math.max(0.4, factor * (1 + Math.min(0.5, Math.max(-0.35, amplitude)))));
    trial = trialUnder(explained, fitted, refit, { kind: 'stand-weight', setup, factor }, from);
    from = trial.fitted;
  }
  if (!trial) throw new Error('no weight was tried');
  return { ...trial, size: sizeCounts('load', factor - 1, sigma) };
}

/** The pictures seen through marks that lean: all turned back by what the level says, until it says no more. */
function leanTrial(explained: Explained, fitted: Fitted, refit: Refit, setup: number): Trial {
  let from = fitted;
  let turnRad = leanOf(from, setup);
  let trial: Trial | undefined;
  for (let step = 0; step < 3; step++) {
    trial = trialUnder(explained, fitted, refit, { kind: 'stand-lean', setup, turnRad }, from);
    from = trial.fitted;
    const left = leanOf(from, setup);
    if (Math.abs(left) < 0.001) break;
    turnRad += left;
  }
  return { ...trial!, size: -((turnRad / leanSigmaRad) ** 2) };
}

function loadOff({ problem, best }: Fitted, setup: number): { amplitude: number; sigma: number } {
  const pattern = problem.model.data.flatMap((datum, d) =>
    datum.setup === setup && datum.kind === 'place'
      ? [{ datum: d, amount: best.prediction.loadSlope[d] }]
      : [],
  );
  const doubt: Doubt = { kind: 'load', data: [], setup, test: 0, pattern, sigma: 1 };
  const [{ amplitude, gain }] = weighDoubts([doubt], problem, best);
  return { amplitude, sigma: gain > 0 ? Math.min(1, Math.abs(amplitude) / Math.sqrt(gain)) : 1 };
}

export function isOfStand(
  setup: PreparedSetup,
): setup is PreparedClamp & Required<Pick<PreparedClamp, 'curve'>> {
  return setup.kind !== 'span' && (setup.curve?.ownColumns.length ?? 0) > 0;
}

function isStrained(fitted: Fitted, pictures: readonly number[]): boolean {
  const { problem, best } = fitted;
  if (robustNoiseFactor(problem, best) > 1.5) return true;
  const { drift } = problem.unknowns;
  return pictures.some((s) => {
    const setup = problem.model.request.setups[s];
    if (!isOfStand(setup)) return false;
    return setup.curve.ownColumns.reduce((sum, k) => sum + best.u[drift.start + k] ** 2, 0) > strainLimit;
  });
}

function slipsAt(setups: readonly PreparedSetup[], setup: number): StandSlip[] {
  const before = setups.findIndex((other, s) => s < setup && isOneClamp(other, setups[setup]));
  const owner = setups[setup];
  const hangs = isOfStand(owner) && momentOf(owner) > 0;
  return [
    { kind: 'bump', setup },
    ...(before < 0 ? [] : [{ kind: 'stand-slip' as const, setup }]),
    ...(hangs ? [{ kind: 'stand-weight' as const, setup, factor: 1 }] : []),
  ];
}

function isOneClamp(a: PreparedSetup, b: PreparedSetup): boolean {
  return isOfStand(a) && isOfStand(b) && a.clampedAs === b.clampedAs;
}

/** Of two pictures in one clamp the one with the smaller moment hangs lower: a blank never does that. */
function swapsOf({ setups }: PreparedRequest, pictures: readonly number[]): StandSlip[] {
  return pictures.flatMap((setup, i) =>
    pictures.slice(0, i).flatMap((other): StandSlip[] => {
      const [a, b] = [setups[other], setups[setup]];
      if (!isOfStand(a) || !isOfStand(b) || a.clampedAs !== b.clampedAs) return [];
      const moment = momentOf(b) - momentOf(a);
      return moment * (hangOf(b) - hangOf(a)) < 0 ? [{ kind: 'stand-swap', setup, other }] : [];
    }),
  );
}

function momentOf({ tests: [{ hung = [] }], clampFromTipM = 0 }: PreparedClamp): number {
  return hung.reduce((sum, { fromTipM, massKg }) => sum + massKg * Math.max(0, clampFromTipM - fromTipM), 0);
}

/** How steeply the tip points down, rad. */
function hangOf({ tests: [{ readings }] }: PreparedClamp): number {
  const { squareToRad = 0 } = readings[readings.length - 1];
  return -squareToRad;
}

function underSlip(request: PreparedRequest, slip: StandSlip): PreparedRequest {
  const { setups } = request;
  const clamp = setups[slip.setup] as PreparedClamp;
  if (slip.kind === 'bump') {
    const own = clamp.curve?.ownColumns ?? [];
    const driftSigmas = request.driftSigmas.map((sigma, k) => bumpSigmasM[own.indexOf(k)] ?? sigma);
    return { ...request, driftSigmas };
  }
  if (slip.kind === 'stand-lean') return turnedBack(request, clamp.curve!.level, slip.turnRad);
  if (slip.kind === 'stand-slip') {
    const { clampedAs } = clamp;
    return {
      ...request,
      setups: setups.map((setup, s) =>
        s >= slip.setup && setup.kind !== 'span' && setup.clampedAs === clampedAs
          ? { ...setup, clampedAs: `${clampedAs} slipped ${slip.setup}` }
          : setup,
      ),
    };
  }
  if (slip.kind === 'stand-weight') {
    const [test] = clamp.tests;
    const hung = test.hung?.map((one) => ({ ...one, massKg: slip.factor * one.massKg }));
    return {
      ...request,
      setups: setups.map((setup, s) => (s === slip.setup ? { ...clamp, tests: [{ ...test, hung }] } : setup)),
    };
  }
  const other = setups[slip.other] as PreparedClamp;
  const withHung = (to: PreparedClamp, from: PreparedClamp): PreparedClamp => ({
    ...to,
    tests: [{ ...to.tests[0], hung: from.tests[0].hung }],
  });
  return {
    ...request,
    setups: setups.map((setup, s) =>
      s === slip.setup ? withHung(clamp, other) : s === slip.other ? withHung(other, clamp) : setup,
    ),
  };
}

function isSame(a: StandSlip, b: StandSlip): boolean {
  return a.kind === b.kind && a.setup === b.setup;
}
