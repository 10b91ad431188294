/**
 * Blank and grip as a surface of revolution about the straight axis: a profile of straight pieces between rows,
 * constant beyond them. Two rows at one place are a step, as at the front of a grip.
 */
export interface SurfaceRow {
  fromTipM: number;
  radiusM: number;
}

/** Rows ascend from the tip. */
export type Surface = readonly SurfaceRow[];

/** Distance of a place beside the axis from the surface; negative inside. */
export function clearanceFrom(surface: Surface, fromTipM: number, fromAxisM: number): number {
  const first = surface[0];
  const last = surface[surface.length - 1];
  const pieces = [{ ...first, fromTipM: Math.min(first.fromTipM, fromTipM) - beyondM }, ...surface];
  pieces.push({ ...last, fromTipM: Math.max(last.fromTipM, fromTipM) + beyondM });
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < pieces.length; i++) {
    least = Math.min(least, distanceToPiece(pieces[i - 1], pieces[i], fromTipM, fromAxisM));
  }
  return fromAxisM < radiusAt(surface, fromTipM) ? -least : least;
}

/** How far the constant ends reach: beyond any place that could be nearest. */
const beyondM = 1e3;

/** At a step the wider of the two counts. */
export function radiusAt(surface: Surface, fromTipM: number): number {
  const after = surface.findIndex((row) => row.fromTipM >= fromTipM);
  if (after <= 0) return surface[after < 0 ? surface.length - 1 : 0].radiusM;
  const [low, high] = [surface[after - 1], surface[after]];
  if (high.fromTipM === fromTipM) {
    return Math.max(...surface.filter((row) => row.fromTipM === fromTipM).map(({ radiusM }) => radiusM));
  }
  const share = (fromTipM - low.fromTipM) / (high.fromTipM - low.fromTipM);
  return low.radiusM + share * (high.radiusM - low.radiusM);
}

function distanceToPiece(from: SurfaceRow, to: SurfaceRow, fromTipM: number, fromAxisM: number): number {
  const [dx, dy] = [to.fromTipM - from.fromTipM, to.radiusM - from.radiusM];
  const [px, py] = [fromTipM - from.fromTipM, fromAxisM - from.radiusM];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / squared));
  return Math.hypot(px - share * dx, py - share * dy);
}
