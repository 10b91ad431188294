/** What stands beside the blank in a picture: marks on the wall, the weight that hangs from its tip. */
import type { Camera } from './camera.ts';
import { type Canvas, fillPolygon, type Place } from './canvas.ts';
import type { Random } from './random.ts';
import { strokeFlat } from './stroke.ts';

/** A printed square with a dot, or a disc, 30 mm across. */
export function paintMark(canvas: Canvas, camera: Camera, at: Place, random: Random): void {
  const paper = { red: 0.8, green: 0.8, blue: 0.78 };
  const ink = { red: 0.02, green: 0.02, blue: 0.02 };
  const square = (half: number): Place[] =>
    [
      [-half, -half],
      [half, -half],
      [half, half],
      [-half, half],
    ].map(([u, v]) => camera.project({ x: at.x + u, y: at.y + v }));
  const disc = (radius: number): Place[] =>
    Array.from({ length: 24 }, (_, i) =>
      camera.project({
        x: at.x + radius * Math.cos((i * Math.PI) / 12),
        y: at.y + radius * Math.sin((i * Math.PI) / 12),
      }),
    );
  fillPolygon(canvas, square(0.022), paper);
  if (random.chance(0.5)) fillPolygon(canvas, square(0.014), ink);
  else fillPolygon(canvas, disc(0.014), ink);
  fillPolygon(canvas, disc(0.004), paper);
}

export function paintHungWeight(
  canvas: Canvas,
  camera: Camera,
  tip: Place,
  random: Random,
  scalePx: number,
): void {
  const drop = random.between(0.05, 0.5);
  const cord = dense([tip, { x: tip.x, y: tip.y - drop }], 0.004).map(camera.project);
  strokeFlat(canvas, cord, () => 0.0004 * scalePx, { red: 0.1, green: 0.1, blue: 0.1 });
  const bottom = tip.y - drop;
  const corners = [
    [-0.015, 0],
    [0.015, 0],
    [0.015, -0.05],
    [-0.015, -0.05],
  ].map(([u, v]) => camera.project({ x: tip.x + u, y: bottom + v }));
  fillPolygon(canvas, corners, { red: 0.15, green: 0.15, blue: 0.17 });
}

export function dense(path: readonly Place[], stepM: number): Place[] {
  const out: Place[] = [path[0]];
  for (let i = 0; i + 1 < path.length; i++) {
    const a = path[i];
    const b = path[i + 1];
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / stepM));
    for (let k = 1; k <= count; k++)
      out.push({ x: a.x + ((b.x - a.x) * k) / count, y: a.y + ((b.y - a.y) * k) / count });
  }
  return out;
}
