/**
 * The sheet on which guides of the bag are laid for a telephone's picture: four reference marks at the corners of a
 * rectangle, with numbers that no mark on the wall has where eight are pinned up.
 * Frame: origin in the rectangle's middle, x to the right, y upwards, metres.
 */
export const bagSheet = {
  /** Of a mark's ring. */
  radiusM: 0.011,
  marks: [
    { number: 21, xM: -0.075, yM: 0.055 },
    { number: 22, xM: 0.075, yM: 0.055 },
    { number: 23, xM: -0.075, yM: -0.055 },
    { number: 24, xM: 0.075, yM: -0.055 },
  ],
  /** Half the sides of the bare paper between them, where the guides lie. */
  halfWidthM: 0.058,
  halfHeightM: 0.04,
} as const;
