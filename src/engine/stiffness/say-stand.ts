/** What is odd about pictures of one stand, as findings. */
import { type Finding, findingsOf } from '../finding.ts';
import { solveLower } from '../numerics/cholesky.ts';
import type { StandSlip } from './explanation.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import type { PreparedClamp } from './prepared-request.ts';
import type { StandKinds } from './stand-kinds.ts';

export const standFinding = findingsOf<StandKinds>();

export function sayStandSlip(slip: StandSlip, problem: FitProblem, best: MostProbable): Finding[] {
  const { setups } = problem.model.request;
  const at = (setup: number) => `setups[${setup}].tests[0]`;
  const picture = slip.setup + 1;
  const clamp = setups[slip.setup] as PreparedClamp;
  switch (slip.kind) {
    case 'bump': {
      const { drift } = problem.unknowns;
      const square = (clamp.curve?.ownColumns ?? []).reduce(
        (sum, k) => sum + best.z[drift.start + k] ** 2,
        0,
      );
      return [standFinding(at(slip.setup), 'stand/camera-moved', { picture, shiftM: Math.sqrt(square) })];
    }
    case 'stand-slip': {
      const { tilt } = problem.unknowns;
      const before = setups.findIndex(
        (other, s) => s < slip.setup && other.kind !== 'span' && other.clampedAs && isBefore(other, clamp),
      );
      const turnRad = best.z[tilt.start + slip.setup] - best.z[tilt.start + Math.max(0, before)];
      return [standFinding(at(slip.setup), 'stand/clamp-slipped', { picture, turnRad })];
    }
    case 'stand-weight': {
      const likelyKg = hungKg(clamp);
      const massKg = likelyKg / slip.factor;
      const other = slip.or === undefined ? undefined : slip.or + 1;
      return [standFinding(at(slip.setup), 'stand/weight-off', { picture, massKg, likelyKg, other })];
    }
    case 'stand-lean':
      // levelFindings says how far, where the pictures know it
      return [];
    case 'stand-swap':
      // the request was swapped: say the weights as they were stated
      return [slip.other, slip.setup].map((setup) =>
        standFinding(at(setup), 'stand/weights-swapped', {
          picture,
          other: slip.other + 1,
          massKg: hungKg(setups[slip.other] as PreparedClamp),
          otherKg: hungKg(clamp),
        }),
      );
  }
}

/** Taps of butt and tip, and the scale along the blank, leave less between holds of one clamp: judgement. */
const leastHoldOffM = 0.008;

/**
 * A camera that moved along a straight blank shows in no place square to it, but in where the hold lies; one whose marks
 * were found anew shows in the pictures alone. `said` is what was named already.
 */
export function holdFindings({ model }: FitProblem, said: readonly Finding[]): Finding[] {
  if (said.some(({ code }) => code === 'stand/camera-moved')) return [];
  const { setups } = model.request;
  return setups.flatMap((setup, s) => {
    if (setup.kind === 'span' || !setup.curve || !isShared(setup)) return [];
    const alike = setups.flatMap((other) =>
      other.kind !== 'span' && other.curve && other.clampedAs === setup.clampedAs ? [other.curve] : [],
    );
    const { holdOff, holdSeen } = setup.curve;
    const seen = alike.flatMap((curve) => (curve.holdSeen ? [curve.holdSeen] : []));
    const onWallM = offMedian(
      inXY(holdOff),
      alike.map((curve) => inXY(curve.holdOff)),
    );
    const inPictureM = holdSeen ? holdSeen.mPerPx * offMedian(holdSeen, seen) : 0;
    const shiftM = Math.max(onWallM, inPictureM);
    if (shiftM < leastHoldOffM) return [];
    return [standFinding(`setups[${s}].tests[0]`, 'stand/camera-moved', { picture: s + 1, shiftM })];
  });
}

interface Place {
  x: number;
  y: number;
}

function inXY({ xM, yM }: { xM: number; yM: number }): Place {
  return { x: xM, y: yM };
}

function offMedian(at: Place, all: readonly Place[]): number {
  const off = (key: keyof Place) => at[key] - medianOf(all.map((place) => place[key]));
  return Math.hypot(off('x'), off('y'));
}

function medianOf(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[(values.length - 1) >> 1];
}

/** How far the marks' frame leans, where the pictures say so by more than three times their doubt. */
export function levelFindings(problem: FitProblem, best: MostProbable): Finding[] {
  const { model } = problem;
  const { setups } = model.request;
  const told = new Set<number>();
  return setups.flatMap((setup, s) => {
    const level = setup.kind !== 'span' && isShared(setup) ? setup.curve?.level : undefined;
    if (!level || told.has(level.column)) return [];
    told.add(level.column);
    const at = problem.unknowns.drift.start + level.column;
    const turnRad = (level.turnedRad ?? 0) + best.z[at] / level.halfM;
    const sigmaRad = (model.request.driftSigmas[level.column] * spreadOf(best, at)) / level.halfM;
    if (Math.abs(turnRad) < leastLeanRad || Math.abs(turnRad) < 3 * sigmaRad) return [];
    const values = { turnRad, plusMinusRad: 1.96 * sigmaRad };
    return [standFinding(`setups[${s}].shared`, 'stand/wall-unlevel', values)];
  });
}

/** Standard deviation of a standardised unknown. */
function spreadOf({ u, factor }: MostProbable, unknown: number): number {
  const row = new Float64Array(u.length);
  row[unknown] = 1;
  solveLower(factor, u.length, row, row);
  return Math.hypot(...row);
}

/** A level or a plumb line held to the marks shows less: judgement. */
const leastLeanRad = 0.012;

function isShared({ clampedAs }: PreparedClamp): boolean {
  return clampedAs !== undefined;
}

/** In the same clamp before it slipped. */
function isBefore({ clampedAs = '' }: PreparedClamp, { clampedAs: after = '' }: PreparedClamp): boolean {
  return after.startsWith(`${clampedAs} slipped`);
}

export function hungKg({ tests: [{ hung = [] }] }: PreparedClamp): number {
  return hung.reduce((sum, { massKg }) => sum + massKg, 0);
}
