import { z } from 'zod';
import { answerLength, lengthM, stationM } from './measures.ts';

const ring = z.strictObject({
  fromTipM: stationM,
  ringHeightM: z.number().min(0).max(1),
  insideM: z.number().positive().max(1),
});

export const spoolRequest = z.strictObject({
  op: z.literal('spool'),
  answer: answerLength,
  lengthM,
  spool: z.strictObject({
    lipDiameterM: z.number().positive().max(1),
    alongM: z.number().min(-100).max(100),
    offsetM: z.number().positive().max(1),
    tiltRad: z.number().min(-1).max(1),
  }),
  rings: z.array(ring).max(100),
  surface: z.array(z.strictObject({ fromTipM: stationM, radiusM: z.number().min(0).max(1) })).max(1000),
  knotM: z.number().positive().max(1).optional(),
});

export const spoolAnswer = z.strictObject({
  status: z.literal('converged'),
  lineAngleRad: z.strictObject({ least: z.number(), largest: z.number() }),
  clearanceM: z.number(),
  clearanceFromTipM: z.number(),
  axisMeetsFromTipM: z.number().nullable(),
  insideNeededM: z.array(z.number()),
});
