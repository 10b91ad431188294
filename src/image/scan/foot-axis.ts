/**
 * The axis and the ends of one flattened foot, to sub-pixel.
 *
 * Across the foot, at steps of a pixel along it, both edges are found where the difference from the ground
 * rises through half the foot's own level, from the outside inwards; the middles of the edges are fitted by a
 * straight line with Tukey's biweight. The foot begins where its level falls away, and ends where the width
 * falls to that of the wire or the middles leave the line.
 */
import { type GreyImage, greyAt } from '../pixels.ts';
import { halfKernel } from '../trace/smooth.ts';

interface AxisGuess {
  x: number;
  y: number;
  /** Unit vector along the foot, pointing from its free end to the wire. */
  dx: number;
  dy: number;
  lengthPx: number;
}

export interface FootAxis {
  /** Middle of the foot on its axis, pixels of the image given. */
  x: number;
  y: number;
  dx: number;
  dy: number;
  lengthPx: number;
  widthPx: number;
  /** Scatter of the edges' middles about the axis, pixels. */
  scatterPx: number;
  /** Share of the cross-sections that agree with the axis. */
  agreeing: number;
}

export function footAxis(
  difference: GreyImage,
  guess: AxisGuess,
  wirePx: number,
  footPx: number,
): FootAxis | undefined {
  let axis = guess;
  let found: FootAxis | undefined;
  for (let round = 0; round < 3; round++) {
    const sections = crossSections(difference, axis, footPx);
    found = fitted(sections, axis, wirePx, footPx);
    if (found === undefined) return undefined;
    axis = { x: found.x, y: found.y, dx: found.dx, dy: found.dy, lengthPx: found.lengthPx };
  }
  return found;
}

interface Section {
  /** Distance along the guess from its middle, and of the edges' middle off it. */
  along: number;
  middle: number;
  width: number;
}

/** Sections over the guess's length and half as much again. */
function crossSections(difference: GreyImage, axis: AxisGuess, footPx: number): Section[] {
  const level = levelOf(difference, axis, footPx);
  const reach = Math.ceil(0.8 * footPx + 3);
  const profile = new Float32Array(2 * reach + 1);
  const smooth = halfKernel(1.5);
  const sections: Section[] = [];
  const half = 0.75 * axis.lengthPx;
  for (let along = -half; along <= half; along++) {
    for (let k = -reach; k <= reach; k++) {
      let sum = 0;
      for (let s = 1 - smooth.length; s < smooth.length; s++) {
        const u = along + s;
        const x = axis.x + u * axis.dx - k * axis.dy;
        const y = axis.y + u * axis.dy + k * axis.dx;
        sum += smooth[Math.abs(s)] * greyAt(difference, x, y);
      }
      profile[k + reach] = sum;
    }
    const section = edgesOf(profile, reach, level / 2);
    if (section) sections.push({ along, ...section });
  }
  return sections;
}

/** The foot's own level: the upper part of the differences over its inner part, as a glint may be like the ground. */
function levelOf(difference: GreyImage, axis: AxisGuess, footPx: number): number {
  const values: number[] = [];
  for (let along = -0.35 * axis.lengthPx; along <= 0.35 * axis.lengthPx; along++) {
    for (let k = -3; k <= 3; k++) {
      const off = (0.35 * footPx * k) / 3;
      values.push(
        greyAt(
          difference,
          axis.x + along * axis.dx - off * axis.dy,
          axis.y + along * axis.dy + off * axis.dx,
        ),
      );
    }
  }
  values.sort((a, b) => a - b);
  return values[Math.floor(0.7 * values.length)];
}

/** The outermost places, either side of the axis, where the profile rises through the level. */
function edgesOf(
  profile: Float32Array,
  reach: number,
  level: number,
): { middle: number; width: number } | undefined {
  let left = 0;
  while (left < profile.length && profile[left] < level) left++;
  let right = profile.length - 1;
  while (right >= 0 && profile[right] < level) right--;
  // A profile that is high at its border runs into something else.
  if (left >= right || left === 0 || right === profile.length - 1) return undefined;
  const leftEdge = left - (profile[left] - level) / Math.max(1e-6, profile[left] - profile[left - 1]);
  const rightEdge = right + (profile[right] - level) / Math.max(1e-6, profile[right] - profile[right + 1]);
  return { middle: (leftEdge + rightEdge) / 2 - reach, width: rightEdge - leftEdge };
}

function fitted(
  sections: readonly Section[],
  axis: AxisGuess,
  wirePx: number,
  footPx: number,
): FootAxis | undefined {
  if (sections.length < 12) return undefined;
  const within = sections.filter((section) => Math.abs(section.along) <= 0.4 * axis.lengthPx);
  const line = robustLine(within);
  if (line === undefined) return undefined;
  // Ends: walk from the middle while the section is wide enough and stays on the line.
  const least = wirePx + 0.45 * (footPx - wirePx);
  const off = (section: Section): number => Math.abs(section.middle - line.at - line.slope * section.along);
  const astray = 0.25 * footPx;
  const isWire = (section: Section): boolean => section.width < least || off(section) > astray;
  const to = walkEnd(sections, 1, (section) => isWire(section), 0.12 * axis.lengthPx);
  const from = walkEnd(sections, -1, (section) => off(section) > 2 * astray, 0.12 * axis.lengthPx);
  const middle = (from + to) / 2;
  const norm = Math.hypot(1, line.slope);
  const dx = (axis.dx - line.slope * axis.dy) / norm;
  const dy = (axis.dy + line.slope * axis.dx) / norm;
  const aside = line.at + line.slope * middle;
  const widths = within.map((section) => section.width).sort((a, b) => a - b);
  return {
    x: axis.x + middle * axis.dx - aside * axis.dy,
    y: axis.y + middle * axis.dy + aside * axis.dx,
    dx,
    dy,
    lengthPx: (to - from) * norm,
    widthPx: widths[widths.length >> 1],
    scatterPx: line.scatter,
    agreeing: line.agreeing,
  };
}

/** The last place, going from the middle, before `stop` holds over `patience` pixels or the sections end. */
function walkEnd(
  sections: readonly Section[],
  step: 1 | -1,
  stop: (section: Section) => boolean,
  patience: number,
): number {
  const ordered = sections
    .filter((section) => section.along * step >= 0)
    .sort((a, b) => (a.along - b.along) * step);
  let last = 0;
  for (const section of ordered) {
    if ((section.along - last) * step > patience) break;
    if (!stop(section)) last = section.along;
  }
  return last;
}

interface RobustLine {
  at: number;
  slope: number;
  scatter: number;
  agreeing: number;
}

/** middle = at + slope·along by Tukey's biweight from a median start. */
function robustLine(sections: readonly Section[]): RobustLine | undefined {
  if (sections.length < 8) return undefined;
  const middles = sections.map((section) => section.middle).sort((a, b) => a - b);
  let line = { at: middles[middles.length >> 1], slope: 0 };
  let scatter = 3;
  let agreeing = 0;
  for (let round = 0; round < 12; round++) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let v0 = 0;
    let v1 = 0;
    const off: number[] = [];
    for (const { along, middle } of sections) {
      const miss = middle - line.at - line.slope * along;
      off.push(Math.abs(miss));
      const ratio = miss / (4.7 * scatter);
      if (Math.abs(ratio) >= 1) continue;
      const weight = (1 - ratio * ratio) ** 2;
      s0 += weight;
      s1 += weight * along;
      s2 += weight * along * along;
      v0 += weight * middle;
      v1 += weight * along * middle;
    }
    const determinant = s0 * s2 - s1 * s1;
    if (determinant < 1e-9) return undefined;
    line = { at: (v0 * s2 - s1 * v1) / determinant, slope: (s0 * v1 - s1 * v0) / determinant };
    off.sort((a, b) => a - b);
    // Begin wide, so that a start along the wrong foot edge can turn.
    scatter = Math.max(0.15, 1.4826 * off[off.length >> 1], 3 - round);
    agreeing = off.filter((value) => value < 4.7 * scatter).length / off.length;
  }
  return { ...line, scatter: Math.max(0.15, scatter), agreeing };
}
