import { type GreyImage, greyAt, greyHalved, greyOf, lumaAt, type Pixels } from '../pixels.ts';
import { type Crossing, crossingsOf } from './crossings.ts';
import { levelAt, type MarkFrame, type MarkReading, readCells } from './read-cells.ts';
import { refineCrossing } from './refine-crossing.ts';
import { type RingFit, ringFit } from './ring-fit.ts';

/** A printed reference mark found in a picture. Pixel places as everywhere: pixel centres at whole numbers. */
export interface FoundMark {
  number: number;
  /** The fish's waist, to sub-pixel. */
  centrePx: [number, number];
  /** Where the ring's outer edge lies to the right, top, left and bottom of the mark as printed. */
  cornersPx: [number, number][];
  /** Mean radius of the ring. */
  radiusPx: number;
  /** 0..1: agreement of the ring, clearness of the cells. */
  sureness: number;
  /** The mark is seen as in a mirror: the picture is flipped, or the sheet is seen from behind. */
  mirrored: boolean;
}

export interface FindMarksOptions {
  /** The longer side is reduced to about this before the first look; marks need about 26 px across in that. */
  sidePx?: number;
  onProgress?(share: number): void;
}

/**
 * Finds every printed reference mark in a picture, whatever its turn, tilt and light; none is invented: each has
 * passed its ring, its fish and a code in which six cells would have to be misread. Sorted by number. The same
 * number twice means two sheets with that number, or a mirror in the picture.
 */
export function findMarks(pixels: Pixels, options: FindMarksOptions = {}): FoundMark[] {
  const { sidePx = 2100 } = options;
  const longSide = Math.max(pixels.width, pixels.height);
  const base = Math.max(1, Math.round(longSide / sidePx));
  const found: FoundMark[] = [];
  let image = greyOf(pixels, base);
  for (const [i, times] of [1, 2, 4, 8].entries()) {
    options.onProgress?.(i / 4);
    if (Math.min(image.width, image.height) < 40) break;
    found.push(...marksAt(pixels, image, times * base));
    image = greyHalved(image);
  }
  options.onProgress?.(1);
  return withoutRepeats(found).sort((a, b) => a.number - b.number);
}

function marksAt(pixels: Pixels, image: GreyImage, factor: number): FoundMark[] {
  const crossings = crossingsOf(image, { leastResponse: 60, most: 500 });
  return crossings.flatMap((crossing) => {
    const mark = markAt(pixels, image, factor, crossing);
    return mark ? [mark] : [];
  });
}

function markAt(pixels: Pixels, image: GreyImage, factor: number, crossing: Crossing): FoundMark | undefined {
  // A step of an eighth of the crossing's own contrast may be the ring's edge, in shadow too.
  const ring = ringFit(image, crossing.x, crossing.y, Math.max(5, crossing.response / 64));
  if (ring === undefined) return undefined;
  const middle = middleOf(pixels, image, factor, crossing, 0.32 * ring.radiusPx);
  if (middle === undefined) return undefined;
  const x = (middle.x + 0.5) / factor - 0.5;
  const y = (middle.y + 0.5) / factor - 0.5;
  // Once more about the true middle: half a pixel of eccentricity is much on a small ring.
  const again = ringFit(image, x, y, Math.max(5, crossing.response / 64)) ?? ring;
  const frame = frameOf(image, x, y, again);
  const reading = frame && readCells(image, frame);
  return reading && foundMark(middle, frame, again, reading, factor);
}

/** First in the reduced picture with a wide window, then in the full one with a narrower. */
function middleOf(
  pixels: Pixels,
  image: GreyImage,
  factor: number,
  crossing: Crossing,
  radiusPx: number,
): { x: number; y: number } | undefined {
  const coarse = refineCrossing((x, y) => greyAt(image, x, y), crossing.x, crossing.y, radiusPx);
  if (coarse === undefined) return undefined;
  const toFull = (at: number): number => (at + 0.5) * factor - 0.5;
  const [x, y] = [toFull(coarse.x), toFull(coarse.y)];
  return refineCrossing((px, py) => lumaAt(pixels, px, py), x, y, Math.min(20, radiusPx * factor));
}

/** The mark's frame up to half a turn, from the ring's ellipse and the fish's darkness at three radii. */
function frameOf(image: GreyImage, x: number, y: number, ring: RingFit): MarkFrame | undefined {
  const [a, b, c, d] = ring.stretch;
  // With y up in the mark: the second column turns round.
  const plain: MarkFrame = { x, y, columns: [a, -b, c, -d] };
  let re = 0;
  let im = 0;
  let all = 0;
  const samples = 48;
  const levels: number[] = [];
  for (let i = 0; i < samples; i++) {
    const psi = (2 * Math.PI * i) / samples;
    let level = 0;
    for (const radius of [0.2, 0.26, 0.32]) level += levelAt(image, plain, radius, psi) / 3;
    levels.push(level);
    re -= level * Math.cos(2 * psi);
    im -= level * Math.sin(2 * psi);
  }
  const mean = levels.reduce((sum, level) => sum + level, 0) / samples;
  for (const level of levels) all += (level - mean) ** 2;
  // Four quarters hold 8/π² = 0.81 of their variation in this wave.
  const share = (2 * (re * re + im * im)) / (samples * Math.max(1e-6, all));
  if (share < 0.6) return undefined;
  const turn = 0.5 * Math.atan2(im, re) - Math.PI / 4;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return { x, y, columns: [a * cos - b * sin, -a * sin - b * cos, c * cos - d * sin, -c * sin - d * cos] };
}

function foundMark(
  middle: { x: number; y: number },
  frame: MarkFrame,
  ring: RingFit,
  reading: MarkReading,
  factor: number,
): FoundMark {
  const { halfTurn, mirrored, number, wrong, unclear, clearness } = reading;
  const [a, b, c, d] = frame.columns.map((value) => value * factor);
  const corner = (angle: number): [number, number] => {
    // Where this angle of the printed mark lies in the frame as it was read.
    const seen = (mirrored ? Math.PI / 2 - angle : angle) + (halfTurn ? Math.PI : 0);
    const u = Math.cos(seen);
    const v = Math.sin(seen);
    return [middle.x + a * u + b * v, middle.y + c * u + d * v];
  };
  return {
    number,
    centrePx: [middle.x, middle.y],
    cornersPx: [0, 0.5, 1, 1.5].map((halves) => corner(halves * Math.PI)),
    radiusPx: ring.radiusPx * factor,
    sureness: Math.min(1, ring.agreeing * clearness * (1 - 0.3 * wrong) * (1 - 0.1 * unclear)),
    mirrored,
  };
}

/** Of readings within half a radius of each other the surest stays. */
function withoutRepeats(found: readonly FoundMark[]): FoundMark[] {
  const kept: FoundMark[] = [];
  for (const mark of [...found].sort((a, b) => b.sureness - a.sureness)) {
    const isNew = kept.every(
      ({ centrePx, radiusPx }) =>
        Math.hypot(centrePx[0] - mark.centrePx[0], centrePx[1] - mark.centrePx[1]) > 0.5 * radiusPx,
    );
    if (isNew) kept.push(mark);
  }
  return kept;
}
