import { type Canvas, type Colour, fillPolygon, type Place } from './canvas.ts';
import type { Random } from './random.ts';
import { strokeFlat, strokeShadow } from './stroke.ts';

/** Puts a wall on the canvas: base colour, light falling off to one side, plaster grain of several sizes. */
export function paintWall(canvas: Canvas, random: Random, base: Colour): void {
  const { width, height, light } = canvas;
  const slopeX = random.between(-0.35, 0.35);
  const slopeY = random.between(-0.3, 0.3);
  const blotches = [
    smoothNoise(random, width, height, width / 4, random.between(0.02, 0.12)),
    smoothNoise(random, width, height, width / 40, random.between(0.0, 0.05)),
    smoothNoise(random, width, height, width / 300, random.between(0.0, 0.05)),
  ];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let shade = 1 + slopeX * (x / width - 0.5) + slopeY * (y / height - 0.5);
      for (const blotch of blotches) shade += blotch(x, y);
      const at = (y * width + x) * 3;
      light[at] = base.red * shade;
      light[at + 1] = base.green * shade;
      light[at + 2] = base.blue * shade;
    }
  }
}

/** Value noise on a grid, bilinear with smooth steps. */
function smoothNoise(
  random: Random,
  width: number,
  height: number,
  cellPx: number,
  amplitude: number,
): (x: number, y: number) => number {
  const columns = Math.ceil(width / cellPx) + 2;
  const rows = Math.ceil(height / cellPx) + 2;
  const grid = Float32Array.from({ length: columns * rows }, () => random.normal() * amplitude);
  return (x, y) => {
    const gx = x / cellPx;
    const gy = y / cellPx;
    const i = Math.floor(gx);
    const j = Math.floor(gy);
    const u = (gx - i) * (gx - i) * (3 - 2 * (gx - i));
    const v = (gy - j) * (gy - j) * (3 - 2 * (gy - j));
    const at = j * columns + i;
    const upper = grid[at] + (grid[at + 1] - grid[at]) * u;
    const lower = grid[at + columns] + (grid[at + columns + 1] - grid[at + columns]) * u;
    return upper + (lower - upper) * v;
  };
}

/** Things about the workshop: boards, shelves, boxes, cables. `project` maps the wall to pixels. */
export interface Clutter {
  canvas: Canvas;
  random: Random;
  project(place: Place): Place;
  scalePx: number;
  frame: { left: number; right: number; bottom: number; top: number };
}

export function paintShelf(clutter: Clutter): void {
  const { random, frame } = clutter;
  const y = random.between(frame.bottom, frame.top);
  const slant = random.between(-0.02, 0.02);
  const from = random.chance(0.5) ? frame.left - 0.3 : random.between(frame.left, frame.right);
  const to = random.chance(0.5) ? frame.right + 0.3 : from + random.between(0.5, 1.5);
  const thick = random.between(0.012, 0.04);
  const tone = random.between(0.05, 0.8);
  quad(clutter, from, to, y, thick, slant, { red: tone, green: tone * 0.85, blue: tone * 0.65 });
  quad(clutter, from, to, y - thick, random.between(0.003, 0.02), slant, {
    red: tone * 0.4,
    green: tone * 0.35,
    blue: tone * 0.3,
  });
}

function quad(
  clutter: Clutter,
  from: number,
  to: number,
  y: number,
  thick: number,
  slant: number,
  colour: Colour,
): void {
  const steps = 40;
  const upper: Place[] = [];
  const lower: Place[] = [];
  for (let i = 0; i <= steps; i++) {
    const x = from + ((to - from) * i) / steps;
    upper.push(clutter.project({ x, y: y + slant * x }));
    lower.push(clutter.project({ x, y: y + slant * x - thick }));
  }
  fillPolygon(clutter.canvas, [...upper, ...lower.reverse()], colour);
}

export function paintBox(clutter: Clutter): void {
  const { random, frame } = clutter;
  const x = random.between(frame.left, frame.right);
  const y = random.between(frame.bottom, frame.top);
  const w = random.between(0.08, 0.5);
  const h = random.between(0.08, 0.4);
  const turn = random.between(-0.15, 0.15);
  const corners = [
    [-w / 2, -h / 2],
    [w / 2, -h / 2],
    [w / 2, h / 2],
    [-w / 2, h / 2],
  ].map(([u, v]) =>
    clutter.project({
      x: x + u * Math.cos(turn) - v * Math.sin(turn),
      y: y + u * Math.sin(turn) + v * Math.cos(turn),
    }),
  );
  fillPolygon(clutter.canvas, corners, {
    red: random.between(0.03, 0.8),
    green: random.between(0.03, 0.8),
    blue: random.between(0.03, 0.8),
  });
}

/** A cable hung from one side to another, with its own shadow. */
export function paintCable(clutter: Clutter): void {
  const { random, frame, canvas, scalePx } = clutter;
  const across = frame.right - frame.left;
  const up = frame.top - frame.bottom;
  const steep = random.chance(0.5);
  const ends = steep
    ? [
        { x: random.between(frame.left, frame.right), y: frame.top + 0.2 },
        { x: random.between(frame.left, frame.right), y: frame.bottom - 0.2 },
      ]
    : [
        { x: frame.left - 0.2, y: random.between(frame.bottom, frame.top) },
        { x: frame.right + 0.2, y: random.between(frame.bottom, frame.top) },
      ];
  const bulges = [0, 1].map(() => ({
    x: random.between(frame.left, frame.right),
    y: random.between(frame.bottom, frame.top) - 0.1 * up,
  }));
  const steps = Math.ceil((across * scalePx) / 4);
  const line: Place[] = [];
  for (let i = 0; i <= steps; i++) {
    const t = i / steps;
    const s = 1 - t;
    line.push(
      clutter.project({
        x:
          s * s * s * ends[0].x +
          3 * s * s * t * bulges[0].x +
          3 * s * t * t * bulges[1].x +
          t * t * t * ends[1].x,
        y:
          s * s * s * ends[0].y +
          3 * s * s * t * bulges[0].y +
          3 * s * t * t * bulges[1].y +
          t * t * t * ends[1].y,
      }),
    );
  }
  const radius = (random.between(0.0012, 0.005) * scalePx) as number;
  const shift = random.between(2, 20);
  const shadow = line.map((place) => ({ x: place.x + shift, y: place.y + shift }));
  strokeShadow(canvas, shadow, () => radius, Math.max(1.5, shift * 0.4), random.between(0.1, 0.4));
  const tone = random.chance(0.5) ? random.between(0.01, 0.08) : random.between(0.3, 0.9);
  strokeFlat(canvas, line, () => radius, {
    red: tone * random.between(0.6, 1.2),
    green: tone * random.between(0.6, 1.2),
    blue: tone * random.between(0.6, 1.2),
  });
}
