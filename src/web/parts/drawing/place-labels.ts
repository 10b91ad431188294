/**
 * Numbers beside marks that crowd each other: each goes to the nearest place out from its mark where it covers
 * neither another number nor the drawn lines; where there is none, it is left out (the table has it).
 */
export interface LabelledMark {
  xPx: number;
  yPx: number;
  /** Unit vector to the side where the number belongs. */
  outX: number;
  outY: number;
  widthPx: number;
  heightPx: number;
  /** Placed before the others, and never left out. */
  first?: boolean;
}
/** Middle of the number; undefined where there was no room. */
export type PlacedLabel = { xPx: number; yPx: number; distancePx: number } | undefined;

export interface Surroundings {
  widthPx: number;
  heightPx: number;
  /** Points along lines that must stay readable. */
  lines: readonly { xPx: number; yPx: number }[];
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const distances = [13, 19, 26, 34];
const turns = [0, 0.5, -0.5, 1, -1, Math.PI];

export function placeLabels(marks: readonly LabelledMark[], around: Surroundings): PlacedLabel[] {
  const placed: PlacedLabel[] = new Array(marks.length).fill(undefined);
  const taken: Box[] = [];
  const order = marks.map((_, index) => index);
  order.sort((a, b) => Number(marks[b].first ?? false) - Number(marks[a].first ?? false) || a - b);
  for (const index of order) {
    const mark = marks[index];
    const candidates = candidatesFor(mark);
    const free = candidates.find((place) => isFree(boxAt(mark, place), taken, around));
    const place = free ?? (mark.first ? candidates[0] : undefined);
    if (!place) continue;
    placed[index] = place;
    taken.push(boxAt(mark, place));
  }
  return placed;
}

function candidatesFor(mark: LabelledMark) {
  return distances.flatMap((distancePx) =>
    turns.map((turn) => {
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      return {
        xPx: mark.xPx + distancePx * (mark.outX * c - mark.outY * s),
        yPx: mark.yPx + distancePx * (mark.outX * s + mark.outY * c),
        distancePx,
      };
    }),
  );
}

function boxAt(mark: LabelledMark, { xPx, yPx }: { xPx: number; yPx: number }): Box {
  const halfWidth = mark.widthPx / 2 + 1;
  const halfHeight = mark.heightPx / 2;
  return { left: xPx - halfWidth, right: xPx + halfWidth, top: yPx - halfHeight, bottom: yPx + halfHeight };
}

function isFree(box: Box, taken: readonly Box[], { widthPx, heightPx, lines }: Surroundings): boolean {
  if (box.left < 0 || box.right > widthPx || box.top < 0 || box.bottom > heightPx) return false;
  const clear = (other: Box) =>
    other.right <= box.left || other.left >= box.right || other.bottom <= box.top || other.top >= box.bottom;
  const inside = ({ xPx, yPx }: { xPx: number; yPx: number }) =>
    xPx > box.left && xPx < box.right && yPx > box.top && yPx < box.bottom;
  return taken.every(clear) && !lines.some(inside);
}
