import type { LineFriction } from './friction.ts';

/**
 * Both ends of a range of coefficients, with the line coming in and going out. Measured coefficients of coated line,
 * mono or braid on ring materials were not found; 0.1 to 0.3 is common practice, no source.
 */
export function frictionEnds(range: { lowest: number; highest: number }): LineFriction[] {
  return (['in', 'out'] as const).flatMap((direction) =>
    [range.lowest, range.highest].map((coefficient) => ({ coefficient, direction })),
  );
}
