/**
 * The middle of a bow to sub-pixel: the place x that every edge points at, Σ g·gᵀ·(p − x) = 0 over places p with
 * slope g in a window inside the fish.
 * Source: W. Förstner and E. Gülch, "A fast operator for detection and precise location of distinct points,
 * corners and centres of circular features", ISPRS Intercommission Workshop, Interlaken 1987 (from memory).
 */

/** Grey level at a place. */
type LevelAt = (x: number, y: number) => number;

interface RefinedCrossing {
  x: number;
  y: number;
}

/** `radiusPx` of the window, 3 to some 20; undefined where the place runs away by more than half of it. */
export function refineCrossing(
  levelAt: LevelAt,
  x: number,
  y: number,
  radiusPx: number,
): RefinedCrossing | undefined {
  // Finer than the edges are wide: a coarser grid would step over them.
  const stepPx = Math.max(0.75, Math.min(1, radiusPx / 8));
  let at = { x, y };
  for (let round = 0; round < 8; round++) {
    const next = crossingOnce(levelAt, at, radiusPx, stepPx);
    if (next === undefined || Math.hypot(next.x - x, next.y - y) > 0.5 * radiusPx) return undefined;
    const moved = Math.hypot(next.x - at.x, next.y - at.y);
    at = next;
    if (moved < 2e-3) break;
  }
  return at;
}

function crossingOnce(
  levelAt: LevelAt,
  at: RefinedCrossing,
  radiusPx: number,
  stepPx: number,
): RefinedCrossing | undefined {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let rx = 0;
  let ry = 0;
  const count = Math.floor(radiusPx / stepPx);
  for (let j = -count; j <= count; j++) {
    for (let i = -count; i <= count; i++) {
      const dx = i * stepPx;
      const dy = j * stepPx;
      const share = (dx * dx + dy * dy) / (radiusPx * radiusPx);
      if (share >= 1) continue;
      // Weights fall to nothing at the window's rim, so that what crosses the rim changes little at a time.
      const weight = (1 - share) ** 2;
      const px = at.x + dx;
      const py = at.y + dy;
      const gx = levelAt(px + 1, py) - levelAt(px - 1, py);
      const gy = levelAt(px, py + 1) - levelAt(px, py - 1);
      xx += weight * gx * gx;
      xy += weight * gx * gy;
      yy += weight * gy * gy;
      rx += weight * (gx * gx * dx + gx * gy * dy);
      ry += weight * (gx * gy * dx + gy * gy * dy);
    }
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-3 * (xx + yy) ** 2)) return undefined;
  return { x: at.x + (rx * yy - ry * xy) / determinant, y: at.y + (xx * ry - xy * rx) / determinant };
}
