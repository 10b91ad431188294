/** What a layout is asked with, and the same with every default filled in. */
import { byQuantity, criteriaIn } from './criteria.ts';
import type { KeepOut } from './kept-free.ts';
import type { LadderLoad, LadderRequest, LayoutLimits } from './ladder-request.ts';
import { arithmeticRule, defaultLadder, defaultLimits } from './layout-defaults.ts';
import type { PlacingRules } from './placing-rules.ts';

/** 'growing': no interval between guides smaller than its neighbour towards the tip. */
export type Intervals = 'growing' | 'free';

interface PinnedMark {
  /** Guide, 0 the one next to the tip-top. */
  index: number;
  fromTipM: number;
}
export interface LayoutRequest extends Omit<LadderRequest, 'ladder' | 'limits'> {
  /** Places of guide 0 and of the last one, the stripping guide: they stay. */
  firstFromTipM: number;
  strippingFromTipM: number;
  /** Each guide's length along the blank: keeps feet apart and out of `keepOut`. Left out: no length. */
  footM?: readonly number[];
  keepOut?: readonly KeepOut[];
  /** Further marks that stay. */
  pinned?: readonly PinnedMark[];
  /** 'growing' if left out. */
  intervals?: Intervals;
  /** Left out: layout-defaults.ts, as is each limit. */
  ladder?: readonly LadderLoad[];
  limits?: Partial<LayoutLimits>;
  /** Left out: the arithmetic rule. */
  start?: { fromTipM: readonly number[] };
}

/** Where the starting list comes from; 'even' where the arithmetic rule has no list of its own. */
type StartKind = 'given' | 'arithmetic-rule' | 'even';

export interface SettledLayout {
  ladder: readonly LadderLoad[];
  limits: LayoutLimits;
  intervals: Intervals;
  start: { fromTipM: number[]; kind: StartKind };
  halfFootM: number[];
  keepOut: readonly KeepOut[];
  /** Least interval between guide i and i + 1: 50 mm, or what keeps their feet apart. */
  leastIntervalM: number[];
  /** Stations that stay, by guide. */
  held: (number | undefined)[];
}

/** No interval is placed smaller than this. */
export const smallestIntervalM = 0.05;

/** For a checked request; undefined where the default ladder cannot be had. */
export function settleLayout(request: LayoutRequest): SettledLayout | undefined {
  const { rod, guides, firstFromTipM, strippingFromTipM } = request;
  const ladder = request.ladder ?? defaultLadder(rod);
  if (!ladder) return undefined;
  const halfFootM = Array.from({ length: guides.count }, (_, i) => (request.footM?.[i] ?? 0) / 2);
  const held = new Array<number | undefined>(guides.count).fill(undefined);
  for (const { index, fromTipM } of request.pinned ?? []) held[index] = fromTipM;
  held[0] = firstFromTipM;
  held[guides.count - 1] = strippingFromTipM;
  return {
    ladder,
    limits: limitsOf(request),
    intervals: request.intervals ?? 'growing',
    start: startOf(request),
    halfFootM,
    keepOut: request.keepOut ?? [],
    leastIntervalM: halfFootM.slice(1).map((half, i) => Math.max(smallestIntervalM, halfFootM[i] + half)),
    held,
  };
}

export function rulesOf({ held, leastIntervalM, intervals }: SettledLayout): PlacingRules {
  const count = held.length;
  return {
    count,
    held,
    leastIntervalM,
    growth: intervals,
    lowM: new Array<number>(count).fill(Number.NEGATIVE_INFINITY),
    highM: new Array<number>(count).fill(Number.POSITIVE_INFINITY),
  };
}

function startOf(request: LayoutRequest): SettledLayout['start'] {
  const { firstFromTipM: first, strippingFromTipM: last, guides } = request;
  if (request.start) return { fromTipM: [...request.start.fromTipM], kind: 'given' };
  const rule = arithmeticRule(first, last, guides.count);
  const climbs = rule.every((station, i) => i === 0 || station - rule[i - 1] >= smallestIntervalM / 2);
  if (climbs) return { fromTipM: rule, kind: 'arithmetic-rule' };
  const even = rule.map((_, i) => first + ((last - first) * i) / Math.max(1, guides.count - 1));
  return { fromTipM: even, kind: 'even' };
}

/** What counts on top only has no limit elsewhere, whatever is asked for. */
function limitsOf({ rod, guides, contact, limits }: LayoutRequest): LayoutLimits {
  const usual = defaultLimits(rod.lengthM, contact !== undefined && guides.side === 'over');
  const firstRad = limits?.firstLineAngleRad;
  return {
    ...byQuantity(({ quantity }) => limits?.[quantity] ?? usual[quantity]!, criteriaIn(usual)),
    ...(firstRad === undefined ? {} : { firstLineAngleRad: firstRad }),
  };
}
