import { dim, fillPolygon, type Place } from './canvas.ts';
import { strokeFlat, strokeTube } from './stroke.ts';
import type { Clutter } from './wall.ts';

/** Walls that are anything but plain: boards, bricks, stripes, rough plaster. */
export function paintBackdrop(clutter: Clutter): string {
  const kind = clutter.random.pick(['boards', 'bricks', 'stripes', 'rough', 'plain'] as const);
  if (kind === 'boards') paintBoards(clutter);
  if (kind === 'bricks') paintBricks(clutter);
  if (kind === 'stripes') paintStripes(clutter);
  if (kind === 'rough') paintRough(clutter);
  return kind;
}

function dimPolygon(clutter: Clutter, corners: readonly Place[], strength: number): void {
  fillPolygon(clutter.canvas, corners.map(clutter.project), { red: 0, green: 0, blue: 0 }, strength);
}

/** Boards lie level or upright; a thin dark gap and a board of another tone at each. */
function paintBoards(clutter: Clutter): void {
  const { random, frame } = clutter;
  const upright = random.chance(0.4);
  const pitch = random.between(0.08, 0.2);
  const gap = random.between(0.001, 0.004);
  const [from, to] = upright ? [frame.left - 0.5, frame.right + 0.5] : [frame.bottom - 0.5, frame.top + 0.5];
  const [near, far] = upright ? [frame.bottom - 0.5, frame.top + 0.5] : [frame.left - 0.5, frame.right + 0.5];
  for (let at = from; at < to; at += pitch) {
    const strip = (a: number, b: number): Place[] =>
      upright
        ? [
            { x: a, y: near },
            { x: b, y: near },
            { x: b, y: far },
            { x: a, y: far },
          ]
        : [
            { x: near, y: a },
            { x: far, y: a },
            { x: far, y: b },
            { x: near, y: b },
          ];
    dimPolygon(clutter, strip(at + gap, at + pitch), random.between(0, 0.12));
    dimPolygon(clutter, strip(at, at + gap), random.between(0.2, 0.6));
  }
}

function paintBricks(clutter: Clutter): void {
  const { random, frame } = clutter;
  const high = random.between(0.06, 0.08);
  const long = random.between(0.2, 0.26);
  const joint = random.between(0.006, 0.012);
  let row = 0;
  for (let y = frame.bottom - 0.4; y < frame.top + 0.4; y += high) {
    row++;
    for (let x = frame.left - 0.5 + (row % 2) * (long / 2); x < frame.right + 0.5; x += long) {
      const corners = [
        { x, y },
        { x: x + long - joint, y },
        { x: x + long - joint, y: y + high - joint },
        { x, y: y + high - joint },
      ];
      dimPolygon(clutter, corners, random.between(0.1, 0.35));
    }
  }
}

function paintStripes(clutter: Clutter): void {
  const { random, frame } = clutter;
  const pitch = random.between(0.02, 0.08);
  const strength = random.between(0.03, 0.12);
  for (let x = frame.left - 0.5; x < frame.right + 0.5; x += pitch) {
    const corners = [
      { x, y: frame.bottom - 0.5 },
      { x: x + pitch / 2, y: frame.bottom - 0.5 },
      { x: x + pitch / 2, y: frame.top + 0.5 },
      { x, y: frame.top + 0.5 },
    ];
    dimPolygon(clutter, corners, strength);
  }
}

/** Grain of a few pixels, as of wood-chip paper or concrete. */
function paintRough(clutter: Clutter): void {
  const { random, canvas } = clutter;
  const cell = random.between(2, 7);
  const strength = random.between(0.02, 0.07);
  const columns = Math.ceil(canvas.width / cell) + 2;
  const rows = Math.ceil(canvas.height / cell) + 2;
  const grid = Float32Array.from({ length: columns * rows }, () => strength * random.normal());
  for (let y = 0; y < canvas.height; y++) {
    const j = Math.floor(y / cell);
    const v = y / cell - j;
    for (let x = 0; x < canvas.width; x++) {
      const i = Math.floor(x / cell);
      const u = x / cell - i;
      const at = j * columns + i;
      const upper = grid[at] + (grid[at + 1] - grid[at]) * u;
      const lower = grid[at + columns] + (grid[at + columns + 1] - grid[at + columns]) * u;
      dim(canvas, y * canvas.width + x, Math.max(0.2, 1 + upper + (lower - upper) * v));
    }
  }
}

/** Another rod leaning against the wall: a straight tapered tube that may cross the blank. */
export function paintLeaningRod(clutter: Clutter): void {
  const { random, frame, canvas, scalePx } = clutter;
  const foot = { x: random.between(frame.left, frame.right), y: frame.bottom - 0.1 };
  const lean = random.between(-0.6, 0.6);
  const length = random.between(1.2, 2.4);
  const steps = 400;
  const line = Array.from({ length: steps + 1 }, (_, i) => ({
    x: foot.x + (length * Math.sin(lean) * i) / steps,
    y: foot.y + (length * Math.cos(lean) * i) / steps,
  })).map(clutter.project);
  const tone = random.between(0.02, 0.5);
  strokeTube(
    canvas,
    line,
    (along) => (0.005 - (0.004 * along) / steps) * scalePx,
    () => ({ red: tone, green: tone * 0.8, blue: tone * 0.6 }),
    { sideways: random.between(-0.6, 0.6), ambient: 0.4, diffuse: 0.6, gloss: 0.1, glossWidth: 0.3 },
  );
}

/** A window's or lamp's patch of light with straight edges. */
export function paintLightPatch(clutter: Clutter): void {
  const { random, frame, canvas } = clutter;
  const x = random.between(frame.left, frame.right);
  const y = random.between(frame.bottom, frame.top);
  const w = random.between(0.3, 1);
  const h = random.between(0.3, 1);
  const slant = random.between(-0.3, 0.3);
  const corners = [
    { x, y },
    { x: x + w, y: y + slant * w },
    { x: x + w + slant * h, y: y + slant * w + h },
    { x: x + slant * h, y: y + h },
  ].map(clutter.project);
  fillPolygon(canvas, corners, { red: 0.9, green: 0.88, blue: 0.8 }, random.between(0.1, 0.35));
  strokeFlat(canvas, [corners[0], corners[1]], () => 1.5, { red: 0.3, green: 0.3, blue: 0.3 }, 0.3);
}
