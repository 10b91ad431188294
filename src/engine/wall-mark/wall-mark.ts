/**
 * The reference mark that is pinned beside a rod and found again in its photograph: a black ring toothed on the
 * inside, with a bow of two opposed triangles in its middle.
 *
 * Frame of a mark: origin in the middle, outer radius 1, angles in radians from the right hand towards the top of
 * the mark as it is printed. Twenty cells go round the ring; cell k covers the angles k·18° to (k+1)·18°, and is
 * black from the tooth's radius outwards where bit k of the mark's word is set. The bow's wings are right-angled
 * triangles towards 45° and 225°, so that its middle is a crossing of two straight edges: perspective keeps
 * crossings, which it does not the middle of a circle.
 *
 * The words: any two of the 24 differ in at least seven cells, however the one is turned by half a turn or seen in
 * a mirror; each differs in seven from itself so turned or mirrored; and no more than four like cells follow each
 * other. They were found by going through the numbers in order and keeping what fits; wall-mark.test.ts checks
 * the property. A reader that forgives one cell takes one mark for another only where six are misread.
 */

export const wallMarkCells = 20;

/** Radii as shares of the outer one. */
export const wallMarkRadii = {
  /** The bow's wings end square to their direction here, and their corners reach `bow`; then white up to the teeth. */
  wing: 0.54 * Math.SQRT1_2,
  bow: 0.54,
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
 * Cells as they are met in the mark's frame when the bow fits the other way round (half a turn), or when the
 * picture is mirrored: mirrored about the bow's black diagonal, which the bow itself does not betray.
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
 * (a hole: it runs the other way round), and the two wings of the bow.
 */
export function wallMarkOutlines(number: number, stepRad = Math.PI / 90): { rings: WallMarkPlace[][] } {
  const { bow, outer } = wallMarkRadii;
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
  const wing = (from: number): WallMarkPlace[] => [
    { x: 0, y: 0 },
    at(bow, from),
    at(bow, from + Math.PI / 2),
  ];
  return {
    rings: [arc(outer, 0, 2 * Math.PI).slice(0, -1), inner.reverse(), wing(0), wing(Math.PI)],
  };
}
