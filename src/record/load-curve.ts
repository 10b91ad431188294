/**
 * A traced curve as the record keeps it: one point after the other, `x y sigma px py` with spaces between and
 * `;` after each; x, y and sigma in millimetres, px and py in pixels of the picture as displayed. Rings the
 * same way with the guide's row id (or `-`) before them. Text, so that a build file stays readable and undo
 * takes it back like any other value.
 */
export interface CurvePoint {
  xM: number;
  yM: number;
  /** Standard error square to the curve. */
  sigmaM: number;
  px: [number, number];
}

export interface CurveRing extends CurvePoint {
  /** Row of the guide; undefined where the builder did not say which. */
  guide: string | undefined;
}

/** Most points kept: 401 of them stay below the longest text of the record. */
export const mostCurvePoints = 401;

/** Butt to tip; more points than are kept are thinned evenly, both ends stay. */
export function curveText(points: readonly CurvePoint[]): string {
  const kept = Math.min(points.length, mostCurvePoints);
  const place = (i: number) => Math.round((i * (points.length - 1)) / Math.max(1, kept - 1));
  return Array.from({ length: kept }, (_, i) => pointText(points[place(i)])).join(';');
}

/** Points of a text; one that makes no sense (a hand-edited file) gives none at all. */
export function curveOf(text: string | undefined): CurvePoint[] {
  const points = (text ?? '').split(';').filter(Boolean).map(pointOf);
  return points.every((point) => point !== undefined) ? points : [];
}

export function ringsText(rings: readonly CurveRing[]): string {
  return rings.map((ring) => `${ring.guide ?? '-'} ${pointText(ring)}`).join(';');
}

export function ringsOf(text: string | undefined): CurveRing[] {
  return (text ?? '')
    .split(';')
    .filter(Boolean)
    .flatMap((part) => {
      const [guide, ...rest] = part.trim().split(' ');
      const point = pointOf(rest.join(' '));
      return point ? [{ ...point, guide: guide === '-' ? undefined : guide }] : [];
    });
}

/** Short enough for a field, another one whenever a place, a distance or the picture changes. */
export function placesMark(parts: readonly (string | number)[]): string {
  // FNV-1a, 32 bits, twice with different beginnings (Fowler, Noll, Vo; from memory).
  const text = parts.join('|');
  return [0x811c9dc5, 0x01234567].map((start) => hashOf(text, start)).join('');
}

function hashOf(text: string, start: number): string {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

function pointText({ xM, yM, sigmaM, px }: CurvePoint): string {
  const mm = (lengthM: number) => Number((lengthM * 1000).toFixed(2)) + 0;
  return [mm(xM), mm(yM), mm(sigmaM), Number(px[0].toFixed(1)), Number(px[1].toFixed(1))].join(' ');
}

function pointOf(text: string): CurvePoint | undefined {
  const [x, y, sigma, px, py, ...more] = text.trim().split(' ').map(Number);
  if (more.length > 0 || ![x, y, sigma, px, py].every(Number.isFinite)) return undefined;
  return { xM: x / 1000, yM: y / 1000, sigmaM: sigma / 1000, px: [px, py] };
}
