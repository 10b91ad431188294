import { z } from 'zod';
import { angleRad, answerLength, finding, solvedShape } from './measures.ts';

const loadKg = z.number().min(0).max(1000);
const dropM = z.number().min(-10).max(10);

export const rotationRequest = z.strictObject({
  op: z.literal('rotation'),
  answer: answerLength,
  loadsKg: z.tuple([loadKg, loadKg]),
  readings: z.array(z.strictObject({ turnRad: angleRad, dropsM: z.tuple([dropM, dropM]) })).max(1000),
  sigmaM: z.number().positive().max(1),
});

const solved = {
  bow: z.strictObject({
    amplitudeM: z.number(),
    directionRad: z.number(),
    sigmaM: z.number(),
    directionSigmaRad: z.number(),
  }),
  stiffnessDifference: z.strictObject({
    fraction: z.number(),
    softRad: z.number(),
    sigma: z.number(),
    softSigmaRad: z.number(),
  }),
  significant: z.strictObject({ bow: z.boolean(), stiffness: z.boolean() }),
  residualRmsM: z.number(),
  findings: z.array(finding),
};
export const rotationAnswer = solvedShape(solved);
