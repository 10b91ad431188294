/**
 * A second, plainer renderer, as a check on the first: every pixel is a bundle of rays, cast through another lens onto
 * the wall, where blank, marks, cord and shadow are asked for analytically. It shares the blank's places with the first
 * and nothing else: the lens is the division model (Fitzgibbon 2001), the lamp is a point with its fall-off, the grain is
 * that of counted light. What it has not: shelves, boxes, cables, guides.
 */
import type { BentBlank } from './bent-blank.ts';
import type { Place } from './canvas.ts';
import type { Picture } from './develop.ts';
import { type AxisLookup, axisLookup } from './plain-axis.ts';
import { type PlainCamera, plainCamera } from './plain-camera.ts';
import { type Random, randomFrom } from './random.ts';

export interface PlainScene {
  camera: PlainCamera;
  marks: Place[];
  paint(blank: BentBlank, index: number, hangs: boolean): Picture;
}

interface Look {
  wall: number;
  stripe: number;
  stripeM: number;
  lamp: { x: number; y: number; awayM: number };
  blank: number;
  /** Of the shadow to the blank, and how soft. */
  shift: Place;
  softM: number;
  shade: number;
  electrons: number;
}

/** A scene that holds all of `blanks`; one stand, one lamp, the grain each picture's own. */
export function plainStand(
  blanks: readonly BentBlank[],
  { seed, widthPx, marks: count }: { seed: number; widthPx: number; marks: number },
): PlainScene {
  const random = randomFrom(7 * seed + 13);
  const heightPx = Math.round(0.75 * widthPx);
  const frame = frameOf(blanks);
  const camera = plainCamera(random, { widthPx, heightPx, ...frame });
  const marks = ringOfMarks(random, frame, count);
  const look = lookOf(random, frame);
  return {
    camera,
    marks,
    paint: (blank, index, hangs) =>
      painted({ camera, marks, look, widthPx, heightPx }, blank, hangs, randomFrom(seed + 500 + index)),
  };
}

function frameOf(blanks: readonly BentBlank[]) {
  const all = blanks.flatMap(({ axis }) => axis);
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { left: left - 0.2, right: right + 0.2, bottom: bottom - 0.25, top: top + 0.25 };
}

/** Evenly round an ellipse within the frame. */
function ringOfMarks(random: Random, f: ReturnType<typeof frameOf>, count: number): Place[] {
  const turn = random.between(0, 1);
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + turn)) / count;
    return {
      x: 0.5 * (f.left + f.right) + 0.46 * (f.right - f.left) * Math.cos(angle),
      y: 0.5 * (f.bottom + f.top) + 0.44 * (f.top - f.bottom) * Math.sin(angle),
    };
  });
}

function lookOf(random: Random, f: ReturnType<typeof frameOf>): Look {
  const light = random.chance(0.35);
  return {
    wall: light ? random.between(0.05, 0.15) : random.between(0.35, 0.75),
    stripe: random.between(0.01, 0.06),
    stripeM: random.between(0.09, 0.16),
    lamp: { x: random.between(f.left, f.right), y: f.top + 0.4, awayM: random.between(1.2, 2.5) },
    blank: light ? random.between(0.5, 0.85) : random.between(0.015, 0.08),
    shift: { x: random.between(-0.03, 0.03), y: random.between(-0.06, -0.015) },
    softM: random.between(0.003, 0.012),
    shade: random.between(0.1, 0.4),
    electrons: random.between(2500, 9000),
  };
}

interface Set {
  camera: PlainCamera;
  marks: readonly Place[];
  look: Look;
  widthPx: number;
  heightPx: number;
}

/** Four rays a pixel where only the wall is, sixteen near the blank, the marks and the cord. */
function painted(
  { camera, marks, look, widthPx, heightPx }: Set,
  blank: BentBlank,
  hangs: boolean,
  random: Random,
) {
  const rgb = new Uint8Array(3 * widthPx * heightPx);
  const axis = axisLookup(blank, 0.03);
  const tip = blank.axis[blank.axis.length - 1];
  const seenAt = (at: Place): number => lightFrom(at, { look, axis, marks, tip, hangs });
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      const middle = camera.cast(x, y);
      const fine =
        axis.isNear(middle) || marks.some((mark) => near(mark, middle, 0.03)) || nearCord(middle, tip, hangs);
      const side = fine ? 4 : 1;
      let sum = 0;
      for (let i = 0; i < side * side; i++) {
        const [u, v] = [((i % side) + 0.5) / side - 0.5, (Math.floor(i / side) + 0.5) / side - 0.5];
        sum += seenAt(fine ? camera.cast(x + u, y + v) : middle);
      }
      const level = counted(sum / (side * side), look.electrons, random);
      const value = Math.round(255 * encoded(level));
      const at = 3 * (y * widthPx + x);
      rgb[at] = value;
      rgb[at + 1] = Math.round(0.98 * value);
      rgb[at + 2] = Math.round(0.95 * value);
    }
  }
  return { width: widthPx, height: heightPx, rgb };
}

interface Seen {
  look: Look;
  axis: AxisLookup;
  marks: readonly Place[];
  tip: Place;
  hangs: boolean;
}

/** Light that comes from a place of the wall's plane, 0..1. */
function lightFrom(at: Place, { look, axis, marks, tip, hangs }: Seen): number {
  const { lamp } = look;
  const lit = 1 / (1 + ((at.x - lamp.x) ** 2 + (at.y - lamp.y) ** 2) / lamp.awayM ** 2);
  const own = axis.at(at);
  if (own && Math.abs(own.offM) < own.radiusM) {
    // A round rod under a lamp above: the upper side is lighter, with a narrow gloss.
    const across = own.offM / own.radiusM;
    const facing = 0.55 + 0.45 * Math.max(0, Math.sqrt(1 - across * across) * 0.8 + across * 0.6);
    return lit * (look.blank * facing + 0.12 * Math.exp(-(((across - 0.55) / 0.12) ** 2)) * look.blank);
  }
  if (hangs && Math.abs(at.x - tip.x) < 0.0004 && at.y < tip.y && at.y > tip.y - 0.18) return 0.06 * lit;
  if (hangs && Math.abs(at.x - tip.x) < 0.014 && at.y < tip.y - 0.18 && at.y > tip.y - 0.23) return 0.1 * lit;
  for (const mark of marks) {
    if (Math.abs(at.x - mark.x) > 0.022 || Math.abs(at.y - mark.y) > 0.022) continue;
    const away = Math.hypot(at.x - mark.x, at.y - mark.y);
    return lit * (away < 0.014 && away > 0.004 ? 0.03 : 0.8);
  }
  const shadow = axis.at({ x: at.x - look.shift.x, y: at.y - look.shift.y });
  const dark = shadow ? look.shade * softEdge(Math.abs(shadow.offM) - shadow.radiusM, look.softM) : 0;
  const stripe = look.stripe * Math.sin((2 * Math.PI * at.y) / look.stripeM);
  return lit * look.wall * (1 + stripe) * (1 - dark);
}

function softEdge(beyondM: number, softM: number): number {
  return 0.5 * (1 - Math.tanh(beyondM / softM));
}

function near(a: Place, b: Place, reachM: number): boolean {
  return Math.abs(a.x - b.x) < reachM && Math.abs(a.y - b.y) < reachM;
}

function nearCord(at: Place, tip: Place, hangs: boolean): boolean {
  return hangs && Math.abs(at.x - tip.x) < 0.02 && at.y < tip.y + 0.01 && at.y > tip.y - 0.25;
}

/** Counted light: its spread is the root of the count. */
function counted(light: number, electrons: number, random: Random): number {
  return Math.max(0, light + Math.sqrt(Math.max(1e-4, light) / electrons) * random.normal());
}

/** The usual curve from light to a file's values (IEC 61966-2-1). */
function encoded(light: number): number {
  const at = Math.min(1, light);
  return at <= 0.0031308 ? 12.92 * at : 1.055 * at ** (1 / 2.4) - 0.055;
}
