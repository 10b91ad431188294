/** Where a round lens finds room in a drawing: clear of what is drawn, and as near to what it enlarges as may be. */
export interface Spot {
  x: number;
  y: number;
}
export interface Lens extends Spot {
  radius: number;
}
interface Sheet {
  widthPx: number;
  heightPx: number;
}

/** The largest radius first; undefined where the sheet has no such room. */
export function lensPlace(near: Spot, drawn: readonly Spot[], sheet: Sheet): Lens | undefined {
  for (let radius = mostPx; radius >= leastPx; radius -= stepPx) {
    const spots = spotsFor(radius, sheet).filter((spot) =>
      drawn.every((point) => apart(point, spot) > radius + clearPx),
    );
    if (spots.length === 0) continue;
    spots.sort((a, b) => apart(a, near) - apart(b, near));
    return { ...spots[0], radius };
  }
  return undefined;
}

const mostPx = 108;
const leastPx = 46;
const stepPx = 8;
const clearPx = 10;

/** Every few pixels, whole on the sheet. */
function spotsFor(radius: number, { widthPx, heightPx }: Sheet): Spot[] {
  const edge = radius + 6;
  const spots: Spot[] = [];
  for (let y = edge; y <= heightPx - edge; y += 10) {
    for (let x = edge; x <= widthPx - edge; x += 10) spots.push({ x, y });
  }
  return spots;
}

const apart = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y);
