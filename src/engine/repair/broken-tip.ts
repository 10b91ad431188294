/**
 * A tip that broke off: the tube that now fits, and which guides have to move.
 *
 * The diameter at the break follows from two readings there, or from the record's profile; the tube from it in
 * 64ths of an inch (handle/tip-tube.ts). Guides count from the tip, so every station shrinks by what is gone.
 * Where the first guide then stands too near the new tip-top, or too far from it, the upper guides are spread anew
 * between the tip-top and the first guide that stays, as an arithmetic series that runs on into the intervals
 * below it:
 *
 *   d, d + e, … d + (n-1) e,   n d + e n(n-1)/2 = S,   d + n e = I
 *
 * S the distance to that guide, I the interval below it. A spread stands if its first interval is no shorter than
 * `shortestShare` of the one the rod had and no interval outgrows the one above it by more than half, or by more
 * than it did on the rod as it was.
 * Common practice, no source: a few inches gone leave the next guide too close to the new tip-top.
 */
import { type Reason, reasonsOf } from '../finding.ts';
import { chooseTipTube, type TipTubeChoice } from '../handle/tip-tube.ts';

interface BrokenTip {
  lostM: number;
  /** Guides from the old tip down, without the tip-top. */
  guidesFromTipM: readonly number[];
  /** Half a foot and a little: a guide nearer to the break than this cannot stay. */
  footM?: number;
}
/** Why no guides were moved. */
export interface RepairKinds {
  'repair/no-guide-left': Record<string, never>;
  'repair/no-spread': Record<string, never>;
}
const repairReason = reasonsOf<RepairKinds>();

export type GuideFate =
  | { kind: 'lost'; wasFromTipM: number }
  | { kind: 'taken-off'; wasFromTipM: number }
  | { kind: 'moved'; wasFromTipM: number; fromTipM: number; byM: number }
  | { kind: 'stays'; wasFromTipM: number; fromTipM: number };

export interface TipRepair {
  /** In the order of the old guides. */
  guides: GuideFate[];
  intervalsM: number[];
  /** Why nothing could be proposed; the guides are then left where they are. */
  trouble?: Reason;
}

export const tipRepairDefaults = {
  shortestShare: 0.75,
  /** Of the first interval the rod had: further, and the line lies on the blank at the tip. */
  longestShare: 1.35,
  growth: 1.5,
  /** Guides above the anchor that may be taken off or moved, at most. */
  mostTouched: 4,
} as const;

/** Guides that stay, move, come off or are gone; the fewest touched, and among those the evenest. */
export function repairBrokenTip(input: BrokenTip): TipRepair {
  const left = guidesLeft(input);
  const plan = plansFor(left, input)[0];
  if (left.alive.length === 0)
    return { ...carriedOut(left), trouble: repairReason('repair/no-guide-left', {}) };
  return plan
    ? carriedOut(left, plan)
    : { ...carriedOut(left), trouble: repairReason('repair/no-spread', {}) };
}

export interface TipRepairs {
  leave: TipRepair;
  /** Every spread that stands. */
  spreads: TipRepair[];
  /** Left where they are, the guides no longer stand as the rod was spaced. */
  upset: boolean;
}

/** To be judged by how the rod bends. */
export function tipRepairs(input: BrokenTip): TipRepairs {
  const left = guidesLeft(input);
  const plans = plansFor(left, input);
  const moving = plans.filter(({ touched }) => touched > 0);
  return {
    leave: carriedOut(left),
    spreads: moving.map((plan) => carriedOut(left, plan)),
    upset: plans[0]?.touched !== 0,
  };
}

interface GuidesLeft {
  lost: readonly GuidePlace[];
  alive: readonly GuidePlace[];
}
interface GuidePlace {
  was: number;
  now: number;
}

function guidesLeft({ lostM, guidesFromTipM, footM = 0.02 }: BrokenTip): GuidesLeft {
  const places = guidesFromTipM.map((was) => ({ was, now: was - lostM }));
  const onRod = ({ now }: GuidePlace) => now > footM;
  return { lost: places.filter((place) => !onRod(place)), alive: places.filter(onRod) };
}

/** Without a plan every guide stays. */
function carriedOut({ lost, alive }: GuidesLeft, plan?: Plan): TipRepair {
  const fates = alive.map(({ was, now }, i): GuideFate => {
    if (!plan || i >= plan.anchor) return { kind: 'stays', wasFromTipM: was, fromTipM: now };
    const place = plan.places[i - plan.takenOff];
    if (place === undefined) return { kind: 'taken-off', wasFromTipM: was };
    return { kind: 'moved', wasFromTipM: was, fromTipM: place, byM: place - now };
  });
  const guides = [...lost.map(({ was }): GuideFate => ({ kind: 'lost', wasFromTipM: was })), ...fates];
  return { guides, intervalsM: intervalsOf(guides) };
}

/** `outsideAtBreakM` from the calliper at the break. */
export function tubeAfter(outsideAtBreakM: number): TipTubeChoice {
  return chooseTipTube(outsideAtBreakM);
}

interface Plan {
  /** First guide that stays where it is; those above are moved, the first `takenOff` of them come off. */
  anchor: number;
  takenOff: number;
  /** Of those that are moved, from the new tip. */
  places: number[];
  touched: number;
  unevenness: number;
}

/** How the rod was spaced before: what its builder allowed himself is allowed here too. */
interface Before {
  firstM: number;
  growth: number;
}

function steepest(stations: readonly number[]): number {
  const intervals = stations.map((at, i) => at - (stations[i - 1] ?? 0));
  const ratios = intervals.slice(1).map((interval, i) => interval / intervals[i]);
  return Math.max(tipRepairDefaults.growth, ...ratios.filter(Number.isFinite));
}

/** Those that stand, the fewest touched first. */
function plansFor({ alive }: GuidesLeft, { guidesFromTipM }: BrokenTip): Plan[] {
  const stations = alive.map(({ now }) => now);
  const before = { firstM: guidesFromTipM[0] ?? 0, growth: steepest(guidesFromTipM) };
  const plans: Plan[] = [];
  for (let anchor = 0; anchor <= Math.min(stations.length - 1, tipRepairDefaults.mostTouched); anchor++) {
    for (let takenOff = 0; takenOff <= anchor; takenOff++) {
      const plan = spread(stations, anchor, takenOff);
      if (plan && stands(plan, stations, before)) plans.push(plan);
    }
  }
  return plans.sort((a, b) => a.touched - b.touched || a.unevenness - b.unevenness);
}

function spread(stations: readonly number[], anchor: number, takenOff: number): Plan | undefined {
  const distance = stations[anchor];
  const below = stations[anchor + 1] === undefined ? undefined : stations[anchor + 1] - distance;
  const n = anchor - takenOff + 1;
  const growth = below === undefined ? 0 : (2 * (n * below - distance)) / (n * (n + 1));
  const first = below === undefined ? distance / n : below - n * growth;
  const places = Array.from({ length: n - 1 }, (_, i) => (i + 1) * first + (growth * i * (i + 1)) / 2);
  return { anchor, takenOff, places, touched: anchor, unevenness: Math.abs(growth - 0.1 * first) / first };
}

function stands({ anchor, places }: Plan, stations: readonly number[], before: Before): boolean {
  const marks = [0, ...places, ...stations.slice(anchor)];
  const intervals = marks.slice(1).map((at, i) => at - marks[i]);
  const { shortestShare, longestShare } = tipRepairDefaults;
  const [first] = intervals;
  if (first < shortestShare * before.firstM * (1 - 1e-9) || first > longestShare * before.firstM)
    return false;
  // Below the anchor the rod is as its builder made it.
  return intervals
    .slice(1, places.length + 2)
    .every(
      (interval, i) => interval <= (before.growth + 1e-9) * intervals[i] && interval >= 0.85 * intervals[i],
    );
}

function intervalsOf(guides: readonly GuideFate[]): number[] {
  const marks = [0, ...guides.flatMap((fate) => ('fromTipM' in fate ? [fate.fromTipM] : []))];
  return marks.slice(1).map((at, i) => at - marks[i]);
}
