/**
 * The reference mark that is pinned beside a rod and found again in its photograph: a black ring toothed on the
 * inside, with a fish in its middle, whose waist, between body and tail, is the place that is measured.
 *
 * Frame of a mark: origin in the middle, outer radius 1, angles in radians from the right hand towards the top of
 * the mark as it is printed. Twenty cells go round the ring; cell k covers the angles k·18° to (k+1)·18°, and is
 * black from the tooth's radius outwards where bit k of the mark's word is set. Tail and body open to a right angle
 * towards 45° and 225°, so that the waist is a crossing of two straight edges: perspective keeps crossings, which it
 * does not the middle of a circle. Only to `straight` does a reader look at them; farther out they are a fish's. Marks
 * printed earlier have two triangles there, and are read alike.
 *
 * The words: any two of the 24 differ in at least seven cells, however the one is turned by half a turn or seen in
 * a mirror; each differs in seven from itself so turned or mirrored; and no more than four like cells follow each
 * other. They were found by going through the numbers in order and keeping what fits; wall-mark.test.ts checks
 * the property. A reader that forgives one cell takes one mark for another only where six are misread.
 */

export const wallMarkCells = 20;

/** Radii as shares of the outer one. */
export const wallMarkRadii = {
  /** So far the edges of tail and body are straight, and what is between them is black. */
  straight: 0.33,
  /** Nothing of the fish reaches farther; then white up to the teeth. */
  fish: 0.54,
  tooth: 0.66,
  rim: 0.84,
  outer: 1,
  /** White paper is needed up to here. */
  paper: 1.22,
} as const;

const words = [
  0x0846f, 0x08793, 0x089bd, 0x09a73, 0x0aac9, 0x0b155, 0x0cf45, 0x0f0bb, 0x108de, 0x10eab, 0x111a7, 0x11749,
  0x12d77, 0x142f5, 0x196c6, 0x1a37a, 0x1e1cf, 0x213ba, 0x25bd7, 0x2c2e2, 0x336f3, 0x37b29, 0x39dea, 0x59bd8,
] as const;

export const wallMarkNumbers: readonly number[] = words.map((_, index) => index + 1);

/** The cells of a mark, in order; true where a tooth is. Throws for a number that no mark has. */
export function wallMarkTeeth(number: number): boolean[] {
  const word = words[number - 1];
  if (word === undefined)
    throw new RangeError(`there is no mark ${number}; marks go from 1 to ${words.length}`);
  return Array.from({ length: wallMarkCells }, (_, cell) => ((word >> cell) & 1) === 1);
}

/**
 * Cells as they are met in the mark's frame when the fish fits the other way round (half a turn), or when the
 * picture is mirrored: mirrored about the fish's length, which the fish itself does not betray.
 */
export function wallMarkPose<T>(cells: readonly T[], pose: { halfTurn: boolean; mirrored: boolean }): T[] {
  const n = cells.length;
  return cells.map((_, k) => {
    const turned = pose.halfTurn ? k + n / 2 : k;
    return cells[(((pose.mirrored ? n / 4 - 1 - turned : turned) % n) + n) % n];
  });
}

interface WallMarkPlace {
  x: number;
  y: number;
}

/**
 * Outlines of what is black, in the mark's frame with y up: the ring's outer circle, its toothed inner rim
 * (a hole: it runs the other way round), the fish's tail and body, and its eye (a hole).
 */
export function wallMarkOutlines(number: number, stepRad = Math.PI / 90): { rings: WallMarkPlace[][] } {
  const { fish, outer, straight } = wallMarkRadii;
  const at = (radius: number, angle: number) => ({
    x: radius * Math.cos(angle),
    y: radius * Math.sin(angle),
  });
  const arc = (radius: number, from: number, to: number): WallMarkPlace[] => {
    const count = Math.max(1, Math.ceil((to - from) / stepRad - 1e-9));
    return Array.from({ length: count + 1 }, (_, i) => at(radius, from + ((to - from) * i) / count));
  };
  const cell = (2 * Math.PI) / wallMarkCells;
  const inner = wallMarkTeeth(number).flatMap((tooth, k) =>
    arc(tooth ? wallMarkRadii.tooth : wallMarkRadii.rim, k * cell, (k + 1) * cell),
  );
  const waist = { x: 0, y: 0 };
  /** About the fish's length, 45° to either side of it, from radii at 45°, 35°, 25°, 15°, 5° and on its length. */
  const along = (towards: number, radii: readonly number[]) => {
    const side = radii.map((radius, i) => [radius, (Math.PI / 180) * Math.max(0, 45 - 10 * i)] as const);
    const other = side.slice(0, -1).toReversed();
    const left = side.map(([radius, aside]) => at(radius, towards - aside));
    return [waist, ...left, ...other.map(([radius, aside]) => at(radius, towards + aside))];
  };
  const tail = along(Math.PI / 4, [fish, 0.53, 0.44, 0.38, straight + 0.02, straight + 0.01]);
  const body = along(1.25 * Math.PI, [straight + 0.02, 0.44, 0.5, 0.53, fish, fish]);
  const head = at(0.42, 1.25 * Math.PI);
  const eye = arc(0.04, 0, 2 * Math.PI)
    .slice(0, -1)
    .map(({ x, y }) => ({ x: head.x + x, y: head.y + y }));
  return {
    rings: [arc(outer, 0, 2 * Math.PI).slice(0, -1), inner.reverse(), tail, body, eye.reverse()],
  };
}
