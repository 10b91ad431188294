import { type BentBlank, bendBlank, blankChoice, offAxis } from './bent-blank.ts';
import type { Camera } from './camera.ts';
import { type Colour, dim, fillPolygon, type Place } from './canvas.ts';
import type { Random } from './random.ts';
import { strokeFlat, strokeShadow, strokeTube } from './stroke.ts';
import type { Clutter } from './wall.ts';

/**
 * What the tracer was not developed on: timber with its grain, door frames, tiles, a pegboard, a person's
 * shadow, a second bent rod with its guides, strings hung from the ceiling.
 */
export function paintStrangeBackdrop(clutter: Clutter): string {
  const kind = clutter.random.pick(['timber', 'door', 'tiles', 'pegboard', 'curtain'] as const);
  if (kind === 'timber') paintTimber(clutter);
  if (kind === 'door') paintDoor(clutter);
  if (kind === 'tiles') paintTiles(clutter);
  if (kind === 'pegboard') paintPegboard(clutter);
  if (kind === 'curtain') paintCurtain(clutter);
  return kind;
}

const black: Colour = { red: 0, green: 0, blue: 0 };

function rectangle(left: number, bottom: number, right: number, top: number): Place[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

/** Planks with long wavering streaks, and knots round which they swell. */
function paintTimber(clutter: Clutter): void {
  const { random, frame, canvas, project, scalePx } = clutter;
  const plank = random.between(0.1, 0.22);
  const streaks = Math.round(random.between(5, 12));
  for (let y = frame.bottom - 0.4; y < frame.top + 0.4; y += plank) {
    fillPolygon(
      canvas,
      rectangle(frame.left - 0.4, y, frame.right + 0.4, y + plank - 0.002).map(project),
      black,
      random.between(0, 0.15),
    );
    fillPolygon(
      canvas,
      rectangle(frame.left - 0.4, y - 0.002, frame.right + 0.4, y).map(project),
      black,
      random.between(0.3, 0.6),
    );
    const knot = { x: random.between(frame.left, frame.right), y: y + plank / 2 };
    for (let k = 0; k < streaks; k++) {
      const base = y + (plank * (k + random.between(0.2, 0.8))) / streaks;
      const wave = random.between(0.001, 0.006);
      const long = random.between(0.4, 1.4);
      const phase = random.between(0, 6.3);
      const from = random.between(frame.left - 0.4, frame.right);
      const to = from + random.between(0.3, 2.5);
      const line: Place[] = [];
      for (let x = from; x < to; x += 0.01) {
        const near = Math.exp(-(((x - knot.x) / 0.06) ** 2));
        const push = Math.sign(base - knot.y || 1) * 0.012 * near;
        line.push(project({ x, y: base + push + wave * Math.sin((6.28 * x) / long + phase) }));
      }
      if (line.length < 2) continue;
      const radius = random.between(0.0004, 0.0022) * scalePx;
      strokeFlat(canvas, line, () => radius, black, random.between(0.05, 0.3));
    }
  }
}

/** An architrave's two uprights and head with several parallel edges, panels inside, a handle. */
function paintDoor(clutter: Clutter): void {
  const { random, frame, canvas, project } = clutter;
  const left = random.between(frame.left - 0.2, frame.right - 0.6);
  const wide = random.between(0.7, 0.95);
  const head = frame.top + random.between(-0.5, 0.3);
  const tone = random.between(0.2, 0.85);
  const bottom = frame.bottom - 0.3;
  const shade = (t: number): Colour => ({ red: t, green: t * 0.95, blue: t * 0.88 });
  fillPolygon(canvas, rectangle(left, bottom, left + wide, head).map(project), shade(tone));
  for (const [from, to, level] of [
    [0, 0.012, 0.7],
    [0.012, 0.05, 1.05],
    [0.05, 0.056, 0.5],
    [0.056, 0.07, 0.9],
  ]) {
    const ink = shade(Math.min(0.95, tone * level));
    fillPolygon(canvas, rectangle(left - to, bottom, left - from, head + to).map(project), ink);
    fillPolygon(canvas, rectangle(left + wide + from, bottom, left + wide + to, head + to).map(project), ink);
    fillPolygon(canvas, rectangle(left - from, head + from, left + wide + from, head + to).map(project), ink);
  }
  for (const [x0, x1] of [
    [0.1, 0.44],
    [0.56, 0.9],
  ]) {
    for (let y = head - 0.12; y > bottom + 0.3; y -= 0.6) {
      const panel = (inset: number): Place[] =>
        rectangle(left + wide * x0 + inset, y - 0.5 + inset, left + wide * x1 - inset, y - inset).map(
          project,
        );
      fillPolygon(canvas, panel(0), shade(tone * 0.6));
      fillPolygon(canvas, panel(0.006), shade(tone * 1.05));
      fillPolygon(canvas, panel(0.02), shade(tone * 0.85));
      fillPolygon(canvas, panel(0.026), shade(tone));
    }
  }
}

function paintTiles(clutter: Clutter): void {
  const { random, frame, canvas, project } = clutter;
  const size = random.between(0.1, 0.2);
  const joint = random.between(0.002, 0.005);
  const light = random.chance(0.5);
  const ink = light ? { red: 0.9, green: 0.9, blue: 0.88 } : { red: 0.1, green: 0.1, blue: 0.1 };
  for (let x = frame.left - 0.4; x < frame.right + 0.4; x += size)
    fillPolygon(canvas, rectangle(x, frame.bottom - 0.4, x + joint, frame.top + 0.4).map(project), ink, 0.7);
  for (let y = frame.bottom - 0.4; y < frame.top + 0.4; y += size)
    fillPolygon(canvas, rectangle(frame.left - 0.4, y, frame.right + 0.4, y + joint).map(project), ink, 0.7);
}

/** Rows of holes, and long tools hung on them. */
function paintPegboard(clutter: Clutter): void {
  const { random, frame, canvas, project } = clutter;
  const pitch = random.between(0.025, 0.04);
  const radius = random.between(0.0025, 0.004);
  for (let y = frame.bottom - 0.2; y < frame.top + 0.2; y += pitch) {
    for (let x = frame.left - 0.2; x < frame.right + 0.2; x += pitch) {
      const hole = Array.from({ length: 8 }, (_, i) => ({
        x: x + radius * Math.cos((i * Math.PI) / 4),
        y: y + radius * Math.sin((i * Math.PI) / 4),
      }));
      fillPolygon(canvas, hole.map(project), black, 0.75);
    }
  }
  for (let i = 0; i < 6; i++) {
    const x = random.between(frame.left, frame.right);
    const y = random.between(frame.bottom, frame.top);
    const tone = random.between(0.03, 0.7);
    const tool = { red: tone, green: tone * random.between(0.4, 1), blue: tone * random.between(0.2, 1) };
    const long = random.between(0.12, 0.35);
    fillPolygon(canvas, rectangle(x, y - long, x + random.between(0.004, 0.012), y).map(project), tool);
    fillPolygon(canvas, rectangle(x - 0.01, y - long - 0.1, x + 0.02, y - long).map(project), tool);
  }
}

/** Soft upright folds. */
function paintCurtain(clutter: Clutter): void {
  const { random, frame, canvas, scalePx, project } = clutter;
  const pitch = random.between(0.05, 0.12);
  for (let x = frame.left - 0.4; x < frame.right + 0.4; x += pitch * random.between(0.7, 1.3)) {
    const lean = random.between(-0.03, 0.03);
    const fold = Array.from({ length: 80 }, (_, i) =>
      project({
        x: x + lean * (i / 80),
        y: frame.bottom - 0.3 + ((frame.top - frame.bottom + 0.6) * i) / 79,
      }),
    );
    strokeShadow(
      canvas,
      fold,
      () => 0.01 * scalePx,
      random.between(0.004, 0.012) * scalePx,
      random.between(0.1, 0.45),
    );
  }
}

/** A person or a lamp's shade in the light: one side of a straight soft edge is darker. */
export function paintLargeShadow(clutter: Clutter): void {
  const { random, canvas } = clutter;
  const angle = random.between(0, Math.PI);
  const nx = Math.cos(angle);
  const ny = Math.sin(angle);
  const at = random.between(0.3, 0.7) * (nx * canvas.width + ny * canvas.height);
  const soft = random.between(3, 60);
  const strength = random.between(0.3, 0.65);
  for (let y = 0; y < canvas.height; y++) {
    for (let x = 0; x < canvas.width; x++) {
      const beyond = (nx * x + ny * y - at) / soft;
      if (beyond < -3) continue;
      dim(canvas, y * canvas.width + x, 1 - strength / (1 + Math.exp(-2 * beyond)));
    }
  }
}

/** Another bent rod with rings and a line, somewhere about the first. */
export function paintSecondRod(clutter: Clutter, camera: Camera): void {
  const { random, frame, canvas, scalePx } = clutter;
  const other = bendBlank(blankChoice(random), 500);
  const moved = moveInto(other, frame, random);
  const tone = random.between(0.02, 0.7);
  const colour = { red: tone, green: tone * random.between(0.6, 1), blue: tone * random.between(0.4, 1) };
  const line = moved.axis.map(camera.project);
  const radius = (along: number): number =>
    other.radiusM[Math.min(other.radiusM.length - 1, Math.round(along))] * scalePx;
  const lamp = {
    sideways: random.between(-0.6, 0.6),
    ambient: 0.4,
    diffuse: 0.5,
    gloss: 0.1,
    glossWidth: 0.3,
  };
  strokeTube(canvas, line, radius, () => colour, lamp);
  const rings = [500, 470, 430, 380, 320, 250].map((i) => camera.project(offAxis(moved, i, 0.008)));
  strokeFlat(canvas, rings, () => 0.0003 * scalePx, { red: 0.8, green: 0.8, blue: 0.8 });
}

function moveInto(blank: BentBlank, frame: Clutter['frame'], random: Random): BentBlank {
  const dx = random.between(frame.left, frame.left + 0.5 * (frame.right - frame.left));
  const dy = random.between(frame.bottom, frame.top);
  return { ...blank, axis: blank.axis.map(({ x, y }) => ({ x: x + dx, y: y + dy })) };
}

/** Strings from the ceiling, some with a bob. */
export function paintStrings(clutter: Clutter): void {
  const { random, frame, canvas, project, scalePx } = clutter;
  const count = Math.round(random.between(1, 4));
  for (let i = 0; i < count; i++) {
    const x = random.between(frame.left, frame.right);
    const to = random.between(frame.bottom, frame.top - 0.2);
    const line = Array.from({ length: 200 }, (_, k) =>
      project({ x, y: frame.top + 0.3 + ((to - frame.top - 0.3) * k) / 199 }),
    );
    const tone = random.pick([0.05, 0.4, 0.9]);
    const radius = random.between(0.0004, 0.0015) * scalePx;
    strokeFlat(canvas, line, () => radius, { red: tone, green: tone, blue: tone * 0.8 });
  }
}
