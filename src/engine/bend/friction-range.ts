import { type BendAnswer, type BendOptions, bend, bendDefaults } from './bend.ts';
import type { BendRequest } from './bend-request.ts';
import type { LineFriction } from './friction.ts';

export interface BendWithFriction {
  friction: LineFriction;
  answer: BendAnswer;
}

/**
 * The bend at both ends of a range of coefficients, line coming in and going out. Measured coefficients of coated
 * line, mono or braid on ring materials were not found; 0.1 to 0.3 is common practice, no source.
 */
export function bendOverFrictionRange(
  request: BendRequest,
  range: { lowest: number; highest: number },
  options: BendOptions = bendDefaults,
): BendWithFriction[] {
  return (['in', 'out'] as const).flatMap((direction) =>
    [range.lowest, range.highest].map((coefficient) => {
      const friction = { coefficient, direction };
      return { friction, answer: bend({ ...request, friction }, options) };
    }),
  );
}
