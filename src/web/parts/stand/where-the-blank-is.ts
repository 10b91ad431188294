import { type EndsKnown, planeOfMarks } from '../../../image/index.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import type { Wall } from '../../../record/read-walls.ts';
import { type NamedMark, photoReading } from '../photo/photo-request.ts';

/** The clamp's place by another picture of the stand, or by a tape on the wall: common practice, no source. */
const seenSigmaM = 0.006;
export const measuredSigmaM = 0.02;

export interface WhereAsked {
  marks: readonly NamedMark[];
  /** Clamp to tip along the blank. */
  heldFromTipM: number | undefined;
  /** The other pictures of the stand. */
  others: readonly LoadPhoto[];
  wall: Wall | undefined;
}

/** What tells where the blank must be in a picture; undefined where too little is known. */
export function whereTheBlankIs({ marks, heldFromTipM, others, wall }: WhereAsked): EndsKnown | undefined {
  const placed = marks.flatMap(({ px, atM }) => (atM ? [{ px, atM }] : []));
  const seen = others.map(clampIn).find((atM) => atM !== undefined);
  const clamp = seen
    ? { atM: seen, sigmaM: seenSigmaM }
    : wall?.clampAtM && { atM: wall.clampAtM, sigmaM: measuredSigmaM };
  if (placed.length < 4 || heldFromTipM === undefined || !clamp) return undefined;
  return { marks: placed, lengthM: heldFromTipM, clamp };
}

/** Where the blank left the clamp in a picture whose curve stands, in the marks' plane. */
function clampIn(photo: LoadPhoto): [number, number] | undefined {
  const { widthPx, heightPx, trace } = photo;
  if (!trace || trace.outOfDate || !widthPx || !heightPx) return undefined;
  const { butt, request } = photoReading(photo, String);
  if (!butt || !request) return undefined;
  const plane = planeOfMarks({ marks: request.marks }, { widthPx, heightPx });
  if (plane.status === 'refused') return undefined;
  const { x, y } = plane.toPlane({ x: butt.px[0], y: butt.px[1] });
  return [x, y];
}
