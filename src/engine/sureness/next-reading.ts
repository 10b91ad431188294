/**
 * The next best reading: of all that the builder could read, what most narrows the marks.
 *
 * Posterior ξ ~ N(0, I) about the fit; best places m = m̂ + M ξ (marks-over.ts); the readings of an option
 * r = r̂ + W ξ + t τ + ε (readings-seen.ts). Having read them, the covariance of m falls by
 *   C (W Wᵀ + t tᵀ + Σ)⁻¹ Cᵀ,   C = M Wᵀ
 * whatever they show (linear Gaussian: Kalman 1960; as a choice of experiment Lindley 1956, Chaloner & Verdinelli
 * 1995). A millimetre counts by the mark's slack: the price is Σ var(m_i) / slack_i². Options are set against
 * each other by its fall over the work, √(readings · minutes): by minutes alone a single look at what hangs already
 * wins too often, and simulated benches then took half as many readings again.
 *
 * Where the start stays because other marks gain too little on the blanks for what they lose, no mark moves however
 * well it is known: there an option counts for what is to be expected of its settling that (lead.ts).
 */

import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { MarkSlack } from '../layout/slack.ts';
import type { LeadAsked } from '../layout/verdict.ts';
import { solveLower } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import { howRead, isClamped, isSameHold } from '../stiffness/how-read.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import type { FitRequest } from '../stiffness/request.ts';
import { directionsSeen } from './directions-seen.ts';
import {
  type Enough,
  type EnoughOptions,
  enoughOf,
  gainOf,
  type TenMinutes,
  tenMinutesOf,
  type WeighedOption,
} from './enough.ts';
import { expectedFall } from './expected-fall.ts';
import { type Lead, leadAsked, leadOver, type ReadAs, settles } from './lead.ts';
import type { MarkSpread } from './mark-spread.ts';
import { type MarksOver, marksOver } from './marks-over.ts';
import type { OptionsQuestion, ReadingOption } from './reading-option.ts';
import { readingsOnOffer } from './reading-options.ts';
import { readingScatter } from './reading-scatter.ts';
import { readingsSeen, type SeenReading } from './readings-seen.ts';

export interface NextReadingQuestion extends OptionsQuestion {
  posterior: Posterior;
  /** What the marks were proposed for, on the fitted blank. */
  request: LayoutRequest & LadderRequest;
  proposedFromTipM: readonly number[];
  slackM: readonly MarkSlack[];
  /** Where those are the start's, for want of sureness: the marks that may be better (marks-that-help.ts). */
  insteadFromTipM?: readonly number[];
}
/** With the ± of each mark now, and what keeping the marks costs. */
export interface NextReading extends MarkSpread {
  slackM: number[];
  /** Most for the work first, the best few; then, if it is another, the one that tells most of all. */
  options: WeighedOption[];
  /** The mark that an option on offer would move farthest for its slack. */
  farthest: { mark: number; movesM: number };
  /** What the best that takes ten minutes at most would bring; undefined where nothing on offer is as short. */
  tenMinutes?: TenMinutes;
  /** Why no more readings are wanted. */
  enough?: Enough;
  /** Where the start stays for want of sureness: on how many blanks the other marks lead, and lose. */
  unsure?: LeadAsked;
}
export interface NextReadingOptions extends EnoughOptions {
  /** A direction that no reading shows by this many of its own ± is not followed; and how many are. */
  leastSeen: number;
  most: number;
  /** Length of a chord to either side, in standard deviations. */
  chord: number;
  /** Blanks drawn for what no reading on offer shows, and for what keeping the marks costs. */
  drawn: number;
  seed: number;
  /** Slacks below this count as this: a pencil's mark [m]. */
  leastSlackM: number;
  shown: number;
  /** Blanks that marks are compared on, before and after a reading, or the start and what may be better. */
  compared: number;
}
export const nextReadingDefaults: NextReadingOptions = {
  leastSeen: 0.7,
  most: 12,
  chord: 1.5,
  drawn: 16,
  seed: 20,
  leastSlackM: 0.003,
  shown: 4,
  littleGain: 0.02,
  compared: 100,
  littleChance: 0.1,
};

/** `progress` hears of the share done. */
export function nextReading(
  question: NextReadingQuestion,
  progress: (share: number) => void = () => undefined,
  options: NextReadingOptions = nextReadingDefaults,
): NextReading {
  const { posterior } = question;
  const offers = readingsOnOffer(question).flatMap((offer) => {
    const seen = readingsSeen(posterior, offer);
    return seen ? [{ offer, seen }] : [];
  });
  const readings = offers.flatMap(({ seen }) => seen);
  const directions = directionsSeen(readings, options);
  const marks = marksOver(question, directions, options, progress);
  const slackM = question.slackM.map(({ towardsTip, towardsButt }) =>
    Math.max(options.leastSlackM, 0.5 * (towardsTip + towardsButt)),
  );
  const lead = leadOf(question, options);
  const readBy = new Map<ReadingOption, SeenReading[]>();
  const weighed = offers.flatMap(({ offer, seen }) =>
    offer.options.map(({ rows, option }): WeighedOption => {
      const read = rows.map((row) => seen[row]);
      const fall = variancesTaken(marks.slopes, directions, read);
      const settled = lead && settles(lead, read, readWith(question.fit, option));
      const whole = { ...weighOption(option, marks, fall, slackM), settles: settled };
      readBy.set(whole, read);
      return whole;
    }),
  );
  weighed.sort((a, b) => gainOf(b) - gainOf(a) || b.narrows / workOf(b) - a.narrows / workOf(a));
  const shown = weighed.slice(0, options.shown);
  const most = weighed.reduce((best, option) => (option.narrows > best.narrows ? option : best), weighed[0]);
  const { spread } = marks;
  const follow = { directions, slopes: marks.slopes, chord: options.chord };
  const compared = { drawn: options.compared, seed: options.seed };
  const tenMinutes = tenMinutesOf(weighed, (option) =>
    expectedFall(question, follow, readBy.get(option) ?? [], compared),
  );
  return {
    ...spread,
    slackM,
    options: [...shown, ...(shown.includes(most) ? [] : [most])],
    farthest: farthestOf(weighed, slackM),
    tenMinutes,
    enough: enoughOf({ spread, slackM, options: weighed, tenMinutes }, options),
    unsure: lead && leadAsked(lead.counts, readSoFar(question.fit)),
  };
}

/** How the bench is read already, and with one more reading. */
function readSoFar(fit: FitRequest): ReadAs {
  return howRead(fit) === 'more' ? 'more' : 'one-hold';
}

function readWith(fit: FitRequest, { swings, supportsFromTipM, clampFromTipM }: ReadingOption): ReadAs {
  const { lengthM } = fit.blank;
  const sameHold = fit.setups
    .filter(isClamped)
    .every((setup) => isSameHold(setup.clampFromTipM ?? lengthM, clampFromTipM, lengthM));
  return !swings && (supportsFromTipM || !sameHold) ? 'more' : readSoFar(fit);
}

/** By how much the variance of each mark falls when these readings are taken together. */
export function variancesTaken(
  slopes: readonly number[][],
  directions: readonly Float64Array[],
  readings: readonly SeenReading[],
): number[] {
  const n = readings.length;
  const scatter = readingScatter(readings);
  const along = readings.map(({ bySpread }) => directions.map((direction) => dot(direction, bySpread)));
  const count = slopes[0]?.length ?? 0;
  const common = new Float64Array(n);
  return Array.from({ length: count }, (_, guide) => {
    for (let i = 0; i < n; i++) {
      common[i] = along[i].reduce((sum, by, k) => sum + by * slopes[k][guide], 0);
    }
    solveLower(scatter, n, common, common);
    return dot(common, common);
  });
}

function leadOf(
  { posterior, request, proposedFromTipM, insteadFromTipM }: NextReadingQuestion,
  { compared: drawn, seed }: NextReadingOptions,
): Lead | undefined {
  if (!insteadFromTipM) return undefined;
  const marks = { ours: insteadFromTipM, theirs: proposedFromTipM };
  return leadOver({ posterior, request, marks }, { drawn, seed });
}

function workOf({ readings, minutes }: ReadingOption): number {
  return Math.sqrt(readings * minutes);
}

function weighOption(
  option: ReadingOption,
  { variance, spread }: MarksOver,
  fall: readonly number[],
  slackM: readonly number[],
): WeighedOption {
  const price = (values: readonly number[]) =>
    values.reduce((sum, value, guide) => sum + value / slackM[guide] ** 2, 0);
  return {
    ...option,
    plusMinusM: spread.plusMinusM.map((now, mark) =>
      variance[mark] > 0 ? now * Math.sqrt(Math.max(0, 1 - fall[mark] / variance[mark])) : now,
    ),
    movesM: fall.map(Math.sqrt),
    narrows: price(fall) / price(variance),
  };
}

function farthestOf(options: readonly WeighedOption[], slackM: readonly number[]): NextReading['farthest'] {
  let farthest = { mark: 0, movesM: 0 };
  for (const { movesM } of options) {
    movesM.forEach((moves, mark) => {
      if (moves / slackM[mark] > farthest.movesM / slackM[farthest.mark]) farthest = { mark, movesM: moves };
    });
  }
  return farthest;
}
