/**
 * Which first ring keeps the fan within the limits, as a region to pick from: for every distance the heights of its
 * middle that do, and for every ring that the builder has the stretches where it does. What is asked: the line turns
 * in the ring no more than the limit over a whole turn, keeps its distance from blank and grip, and, for a fixed spool
 * where it is asked, the spool's axis runs through the ring's opening.
 */
import { type FixedSpool, fanAngles, fanClearance, type LineSource, type RingPlace } from './fan.ts';
import type { Surface } from './surface.ts';

export interface FanLimits {
  lineAngleRad: number;
  clearanceM: number;
}
/** Typical figures of common practice, no source: the builder's to change. */
export const fanLimitsDefault: FanLimits = { lineAngleRad: (5 * Math.PI) / 180, clearanceM: 0.005 };

/** `ringHeightM` from the blank's axis, or from its surface where the question says how thick it is. */
export interface RingOffered {
  name: string;
  ringHeightM: number;
  insideM: number;
}
export interface FirstRingQuestion {
  lengthM: number;
  source: LineSource;
  surface: Surface;
  /** The ring that the line goes on to. */
  next: { fromTipM: number; ringHeightM: number; asideM?: number };
  rings: readonly RingOffered[];
  /** Of the blank under a ring that stands there; left out: heights are from the axis. */
  radiusAtM?(alongM: number): number;
  limits: FanLimits;
  /** Whether the spool's axis is to run through the ring. */
  axisThroughRing: boolean;
}
export interface FirstRingRegion {
  /** From the reel towards the tip: where some height keeps the limits, and from which to which. */
  heights: { fromTipM: number; lowestM: number; highestM: number }[];
  /** For every ring offered, in their order. */
  rings: { name: string; stretches: { fromTipM: number; toTipM: number }[] }[];
}
export interface RegionGrid {
  /** Steps along the rod between reel and next ring, and of the height up to `highestM`. */
  places: number;
  heights: number;
  highestM: number;
}
export const regionGrid: RegionGrid = { places: 60, heights: 40, highestM: 0.08 };

export function firstRingRegion(question: FirstRingQuestion, grid: RegionGrid = regionGrid): FirstRingRegion {
  const { lengthM, source, next } = question;
  const [fromM, toM] = [source.alongM, lengthM - next.fromTipM];
  const places = Array.from(
    { length: grid.places - 1 },
    (_, i) => fromM + ((toM - fromM) * (i + 1)) / grid.places,
  ).filter((alongM) => alongM > 0);
  const heights = places.flatMap((alongM) => heightsAt(question, alongM, grid));
  const rings = question.rings.map((ring) => ({
    name: ring.name,
    stretches: stretchesOf(places, lengthM, (alongM) => ringKeeps(question, alongM, ring)),
  }));
  return { heights, rings };
}

/** Whether this ring, there, keeps every limit. */
export function ringKeeps(question: FirstRingQuestion, alongM: number, ring: RingOffered): boolean {
  const { source, axisThroughRing } = question;
  if (axisThroughRing && 'lipDiameterM' in source) {
    const offAxisM = axisUnderM(source, alongM) - ringUnderM(question, alongM, ring);
    if (Math.abs(offAxisM) > ring.insideM / 2) return false;
  }
  return fanKeeps(question, { alongM, underM: ringUnderM(question, alongM, ring) });
}

/** From the blank's axis to the middle of a ring that stands there. */
export function ringUnderM(
  { radiusAtM }: FirstRingQuestion,
  alongM: number,
  { ringHeightM }: RingOffered,
): number {
  return ringHeightM + (radiusAtM?.(alongM) ?? 0);
}

function fanKeeps(question: FirstRingQuestion, ring: RingPlace): boolean {
  return turnsLittle(question, ring) && clears(question, ring);
}

function turnsLittle({ source, lengthM, next, limits }: FirstRingQuestion, ring: RingPlace): boolean {
  const onTo = { alongM: lengthM - next.fromTipM, underM: next.ringHeightM, asideM: next.asideM };
  return fanAngles(source, ring, onTo).largest <= limits.lineAngleRad;
}

function clears({ source, surface, lengthM, limits }: FirstRingQuestion, ring: RingPlace): boolean {
  return fanClearance(source, ring, { surface, lengthM }).clearanceM >= limits.clearanceM;
}

/** A higher ring clears more and the turn has one valley over the height: what keeps the limits is one stretch. */
function heightsAt(question: FirstRingQuestion, alongM: number, { heights, highestM }: RegionGrid) {
  const turning = Array.from({ length: heights }, (_, i) => (highestM * (i + 1)) / heights).filter((underM) =>
    turnsLittle(question, { alongM, underM }),
  );
  let [low, high] = [0, turning.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (clears(question, { alongM, underM: turning[middle] })) high = middle;
    else low = middle + 1;
  }
  const kept = turning.slice(low);
  if (kept.length === 0) return [];
  return [{ fromTipM: question.lengthM - alongM, lowestM: kept[0], highestM: kept[kept.length - 1] }];
}

function axisUnderM({ alongM, offsetM, tiltRad }: FixedSpool, atM: number): number {
  return offsetM - (atM - alongM) * Math.tan(tiltRad);
}

/** Runs of places that hold, their ends narrowed to a quarter of a millimetre. */
function stretchesOf(places: readonly number[], lengthM: number, holds: (alongM: number) => boolean) {
  const held = places.map(holds);
  const edge = (inside: number, outside: number) => {
    let [kept, lost] = [inside, outside];
    while (Math.abs(kept - lost) > 2.5e-4) {
      const middle = (kept + lost) / 2;
      if (holds(middle)) kept = middle;
      else lost = middle;
    }
    return kept;
  };
  const stretches: { fromTipM: number; toTipM: number }[] = [];
  held.forEach((keeps, i) => {
    if (!keeps || (i > 0 && held[i - 1])) return;
    let last = i;
    while (last + 1 < held.length && held[last + 1]) last++;
    const near = i > 0 ? edge(places[i], places[i - 1]) : places[i];
    const far = last + 1 < places.length ? edge(places[last], places[last + 1]) : places[last];
    stretches.push({ fromTipM: lengthM - far, toTipM: lengthM - near });
  });
  return stretches;
}
