import { blend, type Canvas, type Colour, fillPolygon, type Place } from './canvas.ts';
import type { Random } from './random.ts';
import { strokeFlat } from './stroke.ts';

export interface ScanClutter {
  perMm: number;
  widthMm: number;
  heightMm: number;
  dark: boolean;
  /** Places kept free. */
  taken: readonly Place[];
  hard: boolean;
}

/** What else lies on a scanner's glass: dust, hairs, a scale bar, a coin, a label, a pin. */
export function paintScanClutter(canvas: Canvas, random: Random, clutter: ScanClutter): void {
  const ink = clutter.dark ? random.between(0.3, 0.8) : random.between(0.02, 0.3);
  const colour = { red: ink, green: ink, blue: ink };
  const dust = Math.round(random.between(20, 250));
  for (let i = 0; i < dust; i++) paintSpeck(canvas, random, clutter, colour);
  for (let i = 0; i < 4; i++) if (random.chance(0.6)) paintHair(canvas, random, clutter, colour);
  if (random.chance(0.4)) paintScaleBar(canvas, random, clutter, colour);
  if (random.chance(0.4)) paintCoin(canvas, random, clutter, colour);
  if (random.chance(0.5)) paintLabel(canvas, random, clutter, colour);
  if (random.chance(0.3)) paintPin(canvas, random, clutter, colour);
  if (!clutter.hard) return;
  if (random.chance(0.5)) paintPaperClip(canvas, random, clutter, colour);
  if (random.chance(0.5)) paintSingleFoot(canvas, random, clutter, colour);
  if (random.chance(0.5)) paintRuler(canvas, random, clutter, colour);
}

function freePlace(
  random: Random,
  clutter: ScanClutter,
  awayMm: number,
  borderMm: number,
): Place | undefined {
  for (let tries = 0; tries < 60; tries++) {
    const at = {
      x: random.between(borderMm, clutter.widthMm - borderMm),
      y: random.between(borderMm, clutter.heightMm - borderMm),
    };
    if (clutter.taken.every((other) => Math.hypot(other.x - at.x, other.y - at.y) > awayMm)) return at;
  }
  return undefined;
}

function paintSpeck(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const radius = (random.between(0.02, 0.12) + (random.chance(0.05) ? 0.2 : 0)) * clutter.perMm;
  const x = random.between(0, canvas.width - 1);
  const y = random.between(0, canvas.height - 1);
  for (let py = Math.ceil(Math.max(0, y - radius)); py <= Math.min(canvas.height - 1, y + radius); py++) {
    for (let px = Math.ceil(Math.max(0, x - radius)); px <= Math.min(canvas.width - 1, x + radius); px++) {
      if (Math.hypot(px - x, py - y) <= radius) blend(canvas, py * canvas.width + px, colour, 0.8);
    }
  }
}

function paintHair(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const start = freePlace(random, clutter, 0, 2);
  if (!start) return;
  const lengthMm = random.between(5, 35);
  let heading = random.between(0, 2 * Math.PI);
  const turn = random.between(-0.12, 0.12);
  const line: Place[] = [{ x: start.x * clutter.perMm, y: start.y * clutter.perMm }];
  for (let mm = 0; mm < lengthMm; mm += 0.2) {
    heading += turn * 0.2 + 0.05 * random.normal();
    const last = line[line.length - 1];
    line.push({
      x: last.x + 0.2 * clutter.perMm * Math.cos(heading),
      y: last.y + 0.2 * clutter.perMm * Math.sin(heading),
    });
  }
  const radius = random.between(0.03, 0.06) * clutter.perMm;
  strokeFlat(canvas, line, () => radius, colour, random.between(0.4, 0.9));
}

function rectangle(at: Place, w: number, h: number, turn: number, perMm: number): Place[] {
  return [
    [-w / 2, -h / 2],
    [w / 2, -h / 2],
    [w / 2, h / 2],
    [-w / 2, h / 2],
  ].map(([u, v]) => ({
    x: (at.x + u * Math.cos(turn) - v * Math.sin(turn)) * perMm,
    y: (at.y + u * Math.sin(turn) + v * Math.cos(turn)) * perMm,
  }));
}

function paintScaleBar(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 50, 28);
  if (!at) return;
  const turn = random.chance(0.5) ? 0 : random.between(-0.3, 0.3);
  const length = random.pick([20, 25.4, 40, 50]);
  fillPolygon(canvas, rectangle(at, length, random.between(0.5, 1.5), turn, clutter.perMm), colour);
  if (random.chance(0.6)) {
    for (const end of [-1, 1]) {
      const place = {
        x: at.x + (end * length * Math.cos(turn)) / 2,
        y: at.y + (end * length * Math.sin(turn)) / 2,
      };
      fillPolygon(canvas, rectangle(place, 0.8, 3, turn, clutter.perMm), colour);
    }
  }
}

function paintCoin(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 34, 14);
  if (!at) return;
  const radius = random.between(8, 13) * clutter.perMm;
  const disc = (share: number): Place[] =>
    Array.from({ length: 90 }, (_, i) => ({
      x: at.x * clutter.perMm + share * radius * Math.cos((i * Math.PI) / 45),
      y: at.y * clutter.perMm + share * radius * Math.sin((i * Math.PI) / 45),
    }));
  fillPolygon(canvas, disc(1), { red: colour.red * 0.9, green: colour.green * 0.8, blue: colour.blue * 0.5 });
  fillPolygon(canvas, disc(0.9), colour);
}

function paintLabel(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 24, 16);
  if (!at) return;
  const letters = Math.round(random.between(4, 12));
  for (let i = 0; i < letters; i++) {
    const x = at.x + (i - letters / 2) * 2.2;
    for (let stroke = 0; stroke < 3; stroke++) {
      const place = { x: x + random.between(-0.6, 0.6), y: at.y + random.between(-1, 1) };
      const upright = random.chance(0.5);
      fillPolygon(
        canvas,
        rectangle(place, upright ? 0.35 : 1.5, upright ? 2.4 : 0.35, 0, clutter.perMm),
        colour,
      );
    }
  }
}

/** A straight pin with a round head. */
function paintPin(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 36, 20);
  if (!at) return;
  const turn = random.between(0, Math.PI);
  const length = random.between(20, 34);
  fillPolygon(canvas, rectangle(at, length, 0.6, turn, clutter.perMm), colour);
  const head = { x: at.x + (Math.cos(turn) * length) / 2, y: at.y + (Math.sin(turn) * length) / 2 };
  fillPolygon(canvas, rectangle(head, 1.8, 1.8, turn, clutter.perMm), colour);
}

/** Bent round wire of even width. */
function paintPaperClip(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 40, 20);
  if (!at) return;
  const turn = random.between(0, 2 * Math.PI);
  const local: Place[] = [];
  const arc = (cx: number, radius: number, from: number, to: number): void => {
    for (let i = 0; i <= 20; i++) {
      const angle = from + ((to - from) * i) / 20;
      local.push({ x: cx + radius * Math.cos(angle), y: radius * Math.sin(angle) });
    }
  };
  local.push({ x: -5, y: 2.5 });
  arc(9, 2.5, Math.PI / 2, -Math.PI / 2);
  arc(-9, 3, -Math.PI / 2, -1.5 * Math.PI);
  arc(11, 3.5, Math.PI / 2, -Math.PI / 2);
  const line = local.map((place) => ({
    x: (at.x + place.x * Math.cos(turn) - place.y * Math.sin(turn)) * clutter.perMm,
    y: (at.y + place.x * Math.sin(turn) + place.y * Math.cos(turn)) * clutter.perMm,
  }));
  strokeFlat(canvas, line, () => 0.45 * clutter.perMm, colour);
}

/** A ringed guide with one foot: not what is measured here. */
function paintSingleFoot(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 34, 14);
  if (!at) return;
  const turn = random.between(0, 2 * Math.PI);
  const foot = { x: at.x + 7 * Math.cos(turn), y: at.y + 7 * Math.sin(turn) };
  fillPolygon(canvas, rectangle(foot, 9, 1.6, turn, clutter.perMm), colour);
  const ring = Array.from({ length: 61 }, (_, i) => ({
    x: (at.x + 3.2 * Math.cos((i * Math.PI) / 30)) * clutter.perMm,
    y: (at.y + 3.2 * Math.sin((i * Math.PI) / 30)) * clutter.perMm,
  }));
  strokeFlat(canvas, ring, () => 0.5 * clutter.perMm, colour);
}

/** A strip with tick marks of three lengths. */
function paintRuler(canvas: Canvas, random: Random, clutter: ScanClutter, colour: Colour): void {
  const at = freePlace(random, clutter, 56, 34);
  if (!at) return;
  for (let mm = 0; mm <= 60; mm++) {
    const high = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2.2;
    const place = { x: at.x + mm - 30, y: at.y - high / 2 };
    fillPolygon(canvas, rectangle(place, 0.2, high, 0, clutter.perMm), colour);
  }
  fillPolygon(canvas, rectangle(at, 60.2, 0.2, 0, clutter.perMm), colour);
}
