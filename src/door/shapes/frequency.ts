import { z } from 'zod';
import { answerLength, pointMass, requireOnRod, rod, solvedShape } from './measures.ts';

export const frequencyRequest = z
  .strictObject({
    op: z.literal('frequency'),
    answer: answerLength,
    rod,
    masses: z.array(pointMass).max(10_000).optional(),
    modes: z.int().min(1).max(20),
  })
  .superRefine(({ rod: { lengthM }, masses = [] }, context) => {
    requireOnRod(masses, { path: 'masses', rodLengthM: lengthM, what: 'a mass’s place' }, context);
  });

const solved = { hz: z.array(z.number()), iterations: z.int(), residual: z.number() };
export const frequencyAnswer = solvedShape(solved);
