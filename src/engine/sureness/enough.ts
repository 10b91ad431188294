/** What the next ten minutes would bring, and when no more readings are wanted. */
import type { Settles } from './lead.ts';
import type { MarkSpread } from './mark-spread.ts';
import type { ReadingOption } from './reading-option.ts';

export interface WeighedOption extends ReadingOption {
  /** ± of each mark once it is read, 95 %. */
  plusMinusM: number[];
  /** How far what it shows will move each mark, root mean square. */
  movesM: number[];
  /** Share of Σ (± / slack)² that it takes away. */
  narrows: number;
  /** Where it is open whether the start stays: what it does to that. */
  settles?: Settles;
}
export interface TenMinutes {
  option: WeighedOption;
  /** By how much of itself the worst reading is to be expected to fall, the guides placed anew after it. */
  gain: number;
}
export type Enough =
  /** The ± of every mark is within its slack. */
  | 'within-slack'
  /** Keeping the marks costs no more than the slack's own ceiling. */
  | 'costs-little'
  /** What ten more minutes are expected to take off the worst reading is little. */
  | 'buys-little'
  /** The start stays, and ten more minutes would hardly show whether other marks are better. */
  | 'settles-little'
  /** No option on offer is expected to move a mark by more than its slack. */
  | 'moves-little';

export interface EnoughOptions {
  /** A gain of ten minutes below this is little. */
  littleGain: number;
  /** Where the start stays: ten minutes that move the marks with less than this chance hardly do. */
  littleChance: number;
}

/**
 * What brings most in ten minutes, of options of which the first is most for the work, and what it takes off the worst. By
 * `fallOf` of that one and of the one that narrows most, where the marks follow what is read; where the start stays for
 * want of sureness nothing falls unless it goes.
 */
export function tenMinutesOf(
  options: readonly WeighedOption[],
  fallOf: (option: WeighedOption) => number,
): TenMinutes | undefined {
  const short = options.filter(({ minutes }) => minutes <= 10);
  if (short.length === 0) return undefined;
  const [first] = short;
  if (first.settles) return { option: first, gain: first.settles.gain };
  const most = short.reduce((best, option) => (option.narrows > best.narrows ? option : best));
  const [a, b] = [most, first].map((option) => ({ option, gain: fallOf(option) }));
  return b.gain > a.gain ? b : a;
}

export function enoughOf(
  {
    spread: { plusMinusM, costOfKeeping },
    slackM,
    options,
    tenMinutes,
  }: {
    spread: MarkSpread;
    slackM: readonly number[];
    options: readonly WeighedOption[];
    tenMinutes?: TenMinutes;
  },
  { littleGain, littleChance }: EnoughOptions,
): Enough | undefined {
  const within = (values: readonly number[]) => values.every((value, guide) => value <= slackM[guide]);
  if (within(plusMinusM)) return 'within-slack';
  if (costOfKeeping <= 0.05) return 'costs-little';
  const settled = tenMinutes?.option.settles;
  if (settled) return settled.chance < littleChance ? 'settles-little' : undefined;
  if (tenMinutes && tenMinutes.gain <= littleGain) return 'buys-little';
  return options.every(({ movesM }) => within(movesM)) ? 'moves-little' : undefined;
}

/** Where the start stays, what is expected of its going; else 0. */
export function gainOf({ settles: settled }: WeighedOption): number {
  return settled?.gain ?? 0;
}
