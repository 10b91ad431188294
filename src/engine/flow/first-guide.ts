/** The first guide from the reel on the straight rod: how the fan meets it, and where it would keep the limits. */
import { diameterAt } from '../bench/diameter-profile.ts';
import { guideName } from '../kinds/guides.ts';
import {
  type Clearance,
  type FixedSpool,
  fanAngles,
  fanClearance,
  type NextPlace,
  type Range,
} from '../spool/fan.ts';
import { type FirstRingQuestion, type FirstRingRegion, ringUnderM } from '../spool/first-ring.ts';
import { axisMeetsFromTipM } from '../spool/spool.ts';
import { overWhat } from './fan-under-load.ts';
import type { GuideOnLine, ReelLineQuestion, RingOnHand } from './reel-line-question.ts';

export interface FirstGuideReading {
  lineAngleRad: Range;
  clearance: Clearance;
  over: 'grip' | 'blank';
  /** Whether the spindle's line runs through the ring; undefined without a fixed spool or the ring's opening. */
  axisInRing?: boolean;
}
export interface TakenRing {
  fromTipM: number;
  ring: RingOnHand;
  largestRad: number;
}
/** Which limits the first guide breaks. */
export function overLimits(
  { limits }: ReelLineQuestion,
  { lineAngleRad, clearance, axisInRing }: FirstGuideReading,
) {
  const { clearanceM } = clearance;
  return {
    turn: lineAngleRad.largest > limits.lineAngleRad,
    touch: clearanceM <= 0,
    near: clearanceM > 0 && clearanceM < limits.clearanceM,
    axis: axisInRing === false,
  };
}

/** Where the spindle's line meets the blank's axis, and what a millimetre in each sighting makes of it. */
export type MeetingPlace = Range & { likeliest: number };

function radiusAt({ surface }: ReelLineQuestion, fromTipM: number): number {
  const rows = surface.map((row) => ({ fromTipM: row.fromTipM, outsideM: 2 * row.radiusM }));
  return (diameterAt(rows, fromTipM) ?? 0) / 2;
}

/** A guide's ring on the straight rod, on the reel's side of it. */
export function guidePlace(question: ReelLineQuestion, guide: GuideOnLine): Required<NextPlace> {
  const { fromTipM, ringHeightM, fromReelRad = 0 } = guide;
  const heightM = ringHeightM + radiusAt(question, fromTipM);
  return {
    alongM: question.freeM - fromTipM,
    underM: heightM * Math.cos(fromReelRad),
    asideM: heightM * Math.sin(fromReelRad),
  };
}

/** Rings offered: the builder's own first ring, then what is on hand; heights from the surface. */
export function firstRingQuestion(question: ReelLineQuestion): FirstRingQuestion {
  const { guides, source, surface, freeM, limits } = question;
  const next = guides[guides.length - 2];
  const onTo = guidePlace(question, next);
  const offered = ringsOffered(question);
  return {
    lengthM: freeM,
    source,
    surface,
    next: { fromTipM: next.fromTipM, ringHeightM: onTo.underM, asideM: onTo.asideM },
    rings: offered.map((ring) => ({
      name: guideName(ring),
      ringHeightM: ring.ringHeightM,
      insideM: ring.insideM,
    })),
    limits,
    radiusAtM: (alongM) => radiusAt(question, freeM - alongM),
    axisThroughRing: 'lipDiameterM' in source,
  };
}

/** The builder's own, then those on hand that his knot passes. */
export function ringsOffered({ guides, onHand, knotM = 0 }: ReelLineQuestion): RingOnHand[] {
  const { kind, size, ringHeightM, insideM } = last(guides);
  const own = { kind, size, ringHeightM, insideM: insideM ?? 0 };
  const others = onHand.filter((ring) => guideName(ring) !== guideName(own) && ring.insideM > knotM);
  return [own, ...others];
}

export function firstGuide(question: ReelLineQuestion): FirstGuideReading {
  const { source, surface, freeM, guides } = question;
  const ring = guidePlace(question, last(guides));
  const next = guidePlace(question, guides[guides.length - 2]);
  const clearance = fanClearance(source, ring, { surface, lengthM: freeM });
  const { insideM } = last(guides);
  return {
    lineAngleRad: fanAngles(source, ring, next),
    clearance,
    over: overWhat(clearance.alongM),
    ...('lipDiameterM' in source && insideM !== undefined
      ? { axisInRing: Math.abs(axisUnderM(source, ring.alongM) - ring.underM) <= insideM / 2 }
      : {}),
  };
}

function axisUnderM({ alongM, offsetM, tiltRad }: FixedSpool, atM: number): number {
  return offsetM - (atM - alongM) * Math.tan(tiltRad);
}

export function meetingPlace({
  source,
  freeM,
  tiltSigmaRad = 0,
}: ReelLineQuestion): MeetingPlace | undefined {
  if (!('lipDiameterM' in source)) return undefined;
  const likeliest = axisMeetsFromTipM(source, freeM);
  if (likeliest === undefined) return undefined;
  const turned = (by: number) => axisMeetsFromTipM({ ...source, tiltRad: source.tiltRad + by }, freeM) ?? 0;
  const ends = [turned(-tiltSigmaRad), likeliest, turned(tiltSigmaRad)];
  return { likeliest, least: Math.min(...ends), largest: Math.max(...ends) };
}

/** The nearest place of the builder's own ring, else of any ring on hand. */
export function nearestKept(
  question: ReelLineQuestion,
  asked: FirstRingQuestion,
  region: FirstRingRegion,
): TakenRing | undefined {
  const atM = last(question.guides).fromTipM;
  const offered = ringsOffered(question);
  const places = region.rings.flatMap(({ name, stretches }, index) =>
    stretches.map(({ fromTipM, toTipM }) => {
      const inset = Math.min(insetM, (toTipM - fromTipM) / 2);
      const nearM = Math.min(toTipM - inset, Math.max(fromTipM + inset, atM));
      const own = index === 0;
      const ring = offered.find((one) => guideName(one) === name) as RingOnHand;
      return {
        own,
        awayM: Math.abs(nearM - atM),
        fromTipM: nearM,
        ring,
        underM: ringUnderM(asked, question.freeM - nearM, asked.rings[index]),
      };
    }),
  );
  if (places.length === 0) return undefined;
  const candidates = places.some(({ own }) => own) ? places.filter(({ own }) => own) : places;
  const { fromTipM, ring, underM } = candidates.reduce((best, one) => (one.awayM < best.awayM ? one : best));
  const next = {
    alongM: question.freeM - asked.next.fromTipM,
    underM: asked.next.ringHeightM,
    asideM: asked.next.asideM,
  };
  const there = { alongM: question.freeM - fromTipM, underM };
  return { fromTipM, ring, largestRad: fanAngles(question.source, there, next).largest };
}
/** Not on the very edge, where the next reading would undo it. */
const insetM = 0.003;

function last<T>(list: readonly T[]): T {
  return list[list.length - 1];
}
