/**
 * The fan of lines: from every place that the line may leave the reel at, straight to the middle of the first ring.
 * A fixed spool's line leaves any point of its lip, a circle; a level-wind's any point of its width, a segment.
 * Straight rod, straight lines; no friction on the lip, no ballooning of the line.
 *
 * Line angle. By symmetry about the rod's plane both the line's run and its component along the next stretch depend
 * on one number c alone (cos φ on the lip, the square of the way across on a level-wind), so that
 * cos(angle) = (A + B c)/√(C + D c), whose one inner extreme is c = A/B − 2 C/D. No search is needed.
 */
import { goldenSection, type Least } from '../numerics/golden-section.ts';
import { clearanceFrom, profileOf, type Surface } from './surface.ts';

/** `alongM` from the grip's front towards the tip, `underM` off the axis to the rings' side, `asideM` out of the plane. */
export interface Place {
  alongM: number;
  underM: number;
  asideM: number;
}
/** A ring's middle, in the rod's plane. */
export type RingPlace = Omit<Place, 'asideM'>;
/** The ring after it may stand beside that plane, as where guides go round the rod. */
export type NextPlace = RingPlace & Partial<Place>;

export interface FixedSpool {
  lipDiameterM: number;
  /** Of the lip's middle. */
  alongM: number;
  offsetM: number;
  /** Of its axis, which points to the tip, towards the blank. */
  tiltRad: number;
}
export interface LevelWind {
  widthM: number;
  alongM: number;
  offsetM: number;
}
export type LineSource = FixedSpool | LevelWind;

export interface Range {
  least: number;
  largest: number;
}
export interface Clearance {
  clearanceM: number;
  /** Where the line comes nearest. */
  alongM: number;
}

/** Place on the lip, `turnRad` from the side away from the blank. */
export function onLip({ lipDiameterM, alongM, offsetM, tiltRad }: FixedSpool, turnRad: number): Place {
  const radiusM = lipDiameterM / 2;
  const across = radiusM * Math.cos(turnRad);
  return {
    alongM: alongM + across * Math.sin(tiltRad),
    underM: offsetM + across * Math.cos(tiltRad),
    asideM: radiusM * Math.sin(turnRad),
  };
}

/** Turn of the line in the first ring, over all places that it may come from. */
export function fanAngles(source: LineSource, ring: RingPlace, next: NextPlace): Range {
  if (next.asideM) return rangeOf(aroundPlaces(source).map((place) => turnAt(place, ring, next)));
  const places = [leavingAt(source, 0), leavingAt(source, 0.5), leavingAt(source, 1)];
  const inner = innerExtreme(source, ring, next);
  if (inner !== undefined) places.push(leavingAt(source, inner));
  return rangeOf(places.map((place) => turnAt(place, ring, next)));
}

function rangeOf(values: readonly number[]): Range {
  return { least: Math.min(...values), largest: Math.max(...values) };
}

/** All round, where the two halves are no mirror images: within a thousandth of the extremes of a smooth turn. */
function aroundPlaces(source: LineSource): Place[] {
  const half = Array.from({ length: 65 }, (_, i) => leavingAt(source, i / 64));
  return [...half, ...half.map((place) => ({ ...place, asideM: -place.asideM }))];
}

/** Nearest to blank or grip that the fan comes, from where it leaves the reel to the ring's middle. */
export function fanClearance(
  source: LineSource,
  ring: RingPlace,
  { surface, lengthM }: { surface: Surface; lengthM: number },
): Clearance {
  const profile = profileOf(surface);
  return fanClearanceBy(source, ring, ({ alongM, underM, asideM }) =>
    clearanceFrom(profile, lengthM - alongM, Math.hypot(underM, asideM)),
  );
}

/** The same beside any body; `clear`: distance of a place from it, negative inside. */
export function fanClearanceBy(
  source: LineSource,
  ring: RingPlace,
  clear: (place: Place) => number,
): Clearance {
  const along = (from: Place, share: number): Place => ({
    alongM: from.alongM + share * (ring.alongM - from.alongM),
    underM: from.underM + share * (ring.underM - from.underM),
    asideM: (1 - share) * from.asideM,
  });
  const clearAt = (from: Place, share: number) => clear(along(from, share));
  const nearestOn = (from: Place) => leastOf((share) => clearAt(from, share), { steps: 40, valleys: 2 });
  const around = leastOf((share) => nearestOn(leavingAt(source, share)).value, { steps: 8, valleys: 1 });
  const from = leavingAt(source, around.at);
  const { at, value } = nearestOn(from);
  return { clearanceM: value, alongM: along(from, at).alongM };
}

/** Half of the places are enough, the other half is their mirror image: share 0 to 1 of the half turn or half width. */
function leavingAt(source: LineSource, share: number): Place {
  if ('lipDiameterM' in source) return onLip(source, Math.PI * share);
  const { widthM, alongM, offsetM } = source;
  return { alongM, underM: offsetM, asideM: (share * widthM) / 2 };
}

/** Share at which the turn in the ring has its inner extreme, if it has one. */
function innerExtreme(source: LineSource, ring: RingPlace, next: RingPlace): number | undefined {
  if (!('lipDiameterM' in source)) return undefined;
  const radiusM = source.lipDiameterM / 2;
  const [run, drop] = [ring.alongM - source.alongM, ring.underM - source.offsetM];
  const [onRun, onDrop] = [next.alongM - ring.alongM, next.underM - ring.underM];
  const [acrossRun, acrossDrop] = [radiusM * Math.sin(source.tiltRad), radiusM * Math.cos(source.tiltRad)];
  const a = run * onRun + drop * onDrop;
  const b = -(acrossRun * onRun + acrossDrop * onDrop);
  const c = run * run + drop * drop + radiusM * radiusM;
  const d = -2 * (run * acrossRun + drop * acrossDrop);
  const cosine = a / b - (2 * c) / d;
  return Math.abs(cosine) <= 1 ? Math.acos(cosine) / Math.PI : undefined;
}

function turnAt(from: Place, ring: RingPlace, next: NextPlace): number {
  const [x, y, z] = [ring.alongM - from.alongM, ring.underM - from.underM, -from.asideM];
  const [u, v, w] = [next.alongM - ring.alongM, next.underM - ring.underM, next.asideM ?? 0];
  return Math.atan2(Math.hypot(y * w - z * v, z * u - x * w, x * v - y * u), x * u + y * v + z * w);
}

/** Least value over shares 0 to 1: of evenly spread places, then beside the best of them. */
function leastOf(
  value: (share: number) => number,
  { steps, valleys }: { steps: number; valleys: number },
): Least {
  const tried = Array.from({ length: steps + 1 }, (_, i) => ({ at: i / steps, value: value(i / steps) }));
  const best = tried.toSorted((a, b) => a.value - b.value).slice(0, valleys);
  const beside = best.map(({ at }) =>
    goldenSection(value, Math.max(0, at - 1 / steps), Math.min(1, at + 1 / steps), 1e-5),
  );
  return [...best, ...beside].reduce((least, place) => (place.value < least.value ? place : least));
}
