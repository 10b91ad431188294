/** How many guides: for each number the best layout's worst readings, what they weigh and what that does at the tip. */
import type { ByQuantity } from '../layout/criteria.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { type LineOnBlank, lineOnBlank } from '../layout/line-on-blank.ts';
import type { WorstPlace } from '../layout/worst.ts';
import type { Choices } from './choices.ts';
import { feltAtTipKg } from './felt-at-tip.ts';
import { firstHz } from './finish-effects.ts';
import { finishedRod } from './finished-rod.ts';
import { foregripOf } from './foregrip.ts';
import { withGuideCount } from './guide-count.ts';
import { type LayoutQuestion, layoutQuestion } from './layout-question.ts';
import { type RoundAtLoad, roundAnswer } from './round-answer.ts';

export type CountQuestion = Parameters<typeof layoutQuestion>[0];

export interface GuideCount {
  count: number;
  status: LayoutFound['status'];
  fromTipM: readonly number[];
  /** The largest reading of each criterion over all loads. */
  readings: ByQuantity<number>;
  /** Largest reading over its limit, and where. */
  worst: number;
  worstAt: WorstPlace;
  keepsLimits: boolean;
  /** Tip-top, guides, thread and finish. */
  addedKg: number;
  /** The same, as it is felt at the tip. */
  feltAtTipKg: number;
  /** Clamped at the grip: wraps as a soft sleeve, and every foot one with the blank. Left out for a massless rod. */
  firstHz?: { loose: number; bonded: number };
  /** With guides on top or in a spiral: one for every load. */
  onBlank?: OnBlank[];
}
/** Whether the line touches blank or foregrip, and where. */
export interface OnBlank extends Pick<LineOnBlank, 'clear' | 'foregripClearM'> {
  /** It does, between the last guide and the reel alone: no number of guides helps there. */
  behindLastOnly: boolean;
}
export interface CountsAnswer {
  /** Ascending; a number that no layout was found for is left out. */
  counts: GuideCount[];
  /** Fewest that keep the limits, of those tried. */
  fewest?: number;
  /** With guides on top or in a spiral, for every load: the fewest whose line touches nothing, of those tried. */
  fewestClear?: (number | undefined)[];
}
interface CountOptions {
  /** Numbers beside the builder's own that are tried first. */
  beside: number;
  /** Numbers beyond these, as long as none keeps the limits, or the line lies on the blank with all of them. */
  furtherUp: number;
}
const countDefaults: CountOptions = { beside: 1, furtherUp: 3 };

/** `progress` hears of the answer after every number; at most 2 beside + 1 + furtherUp layouts are placed. */
export function answerCounts(
  question: CountQuestion,
  progress: (soFar: CountsAnswer) => void = () => undefined,
  { beside, furtherUp }: CountOptions = countDefaults,
): CountsAnswer {
  const own = question.choices.guides.length;
  const found: GuideCount[] = [];
  const offsets = Array.from({ length: 2 * beside + 1 + furtherUp }, (_, i) => i - beside);
  for (const offset of offsets) {
    const count = own + offset;
    if (count < 2) continue;
    if (offset > beside && isEnough(found)) break;
    const answer = countAnswer(question, count);
    if (!answer) continue;
    found.push(answer);
    progress(summary(found));
  }
  return summary(found);
}

/** One keeps the limits, and one the line off the blank at every load. */
function isEnough(found: readonly GuideCount[]): boolean {
  const clear = found.some(({ onBlank = [] }) => onBlank.every((at) => at.clear));
  return clear && found.some(({ keepsLimits }) => keepsLimits);
}

function summary(counts: readonly GuideCount[]): CountsAnswer {
  const loads = counts[0]?.onBlank?.length;
  return {
    counts: [...counts],
    fewest: counts.find(({ keepsLimits }) => keepsLimits)?.count,
    fewestClear:
      loads === undefined
        ? undefined
        : Array.from(
            { length: loads },
            (_, load) => counts.find(({ onBlank }) => onBlank?.[load].clear)?.count,
          ),
  };
}

/** Undefined where no layout of so many guides keeps the rules. */
function countAnswer(question: CountQuestion, count: number): GuideCount | undefined {
  const choices = withGuideCount(question.choices, count);
  const asked = layoutQuestion({ ...question, choices });
  if (asked.loads.ladder.length === 0) return undefined;
  const placed = layout(asked.request);
  if (placed.status === 'refused') return undefined;
  const { worst, ...readings } = placed.score;
  return {
    count,
    status: placed.status,
    fromTipM: placed.fromTipM,
    readings,
    worst,
    worstAt: placed.worstAt,
    keepsLimits: placed.status === 'converged' && worst <= 1,
    ...weightOf({ ...question, choices }, asked, placed.fromTipM),
    onBlank: touched({ ...question, choices }, asked, placed.fromTipM),
  };
}

function touched(
  { bench, choices, diameters }: CountQuestion,
  { request: ladder }: LayoutQuestion,
  fromTipM: readonly number[],
): OnBlank[] | undefined {
  if (diameters.length === 0 || !mayTouch(choices)) return undefined;
  const laid = { ladder, fromTipM, diameters, foregrip: foregripOf(bench.handle, choices) };
  return choices.spiral ? roundAnswer(laid).map(clearAround) : lineOnBlank(laid).map(clearOnTop);
}

function mayTouch({ side, spiral }: Choices): boolean {
  return side === 'over' || spiral !== undefined;
}

function clearOnTop({ clear, foregripClearM, touched, behindLast }: LineOnBlank): OnBlank {
  return { clear, foregripClearM, behindLastOnly: behindLast && touched.length === 1 };
}

/** In a spiral the line is taken straight from ring to ring. */
function clearAround({ status, clearM, foregripClearM }: RoundAtLoad): OnBlank {
  const least = Math.min(...clearM, foregripClearM ?? Number.POSITIVE_INFINITY);
  const behindLastOnly = clearM[clearM.length - 1] <= 0 && clearM.filter((one) => one <= 0).length === 1;
  return { clear: status === 'converged' && least > 0, foregripClearM, behindLastOnly };
}

function weightOf(parts: CountQuestion, { rod }: LayoutQuestion, fromTipM: readonly number[]) {
  const { loose, bonded } = finishedRod({ ...parts, rod }, fromTipM);
  const hz = { loose: firstHz(loose), bonded: firstHz(bonded) };
  return {
    addedKg: loose.masses.reduce((sum, { massKg }) => sum + massKg, 0),
    feltAtTipKg: feltAtTipKg(rod, loose.masses),
    firstHz: Number.isFinite(hz.loose) ? hz : undefined,
  };
}
