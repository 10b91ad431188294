import { z } from 'zod';
import { answerLength, finding } from './measures.ts';

/** Pixel places: origin top left, x right, y down, of the picture as it is displayed. */
const pixel = z.tuple([z.number().min(-1e5).max(1e5), z.number().min(-1e5).max(1e5)]);
const place = z.tuple([z.number().min(-100).max(100), z.number().min(-100).max(100)]);

export const imagePath = z.string().min(1).max(4096);

export const traceRequest = z.strictObject({
  op: z.literal('trace'),
  answer: answerLength,
  /** JPEG or PNG; a relative path counts from where the command was called. */
  image: imagePath,
  marks: z.array(z.strictObject({ px: pixel, atM: place })).max(500),
  ends: z.strictObject({ butt: pixel, tip: pixel }),
  via: z.array(pixel).max(100).optional(),
});

const findings = z.array(finding);
export const traceAnswer = z.discriminatedUnion('status', [
  z.strictObject({
    status: z.literal('converged'),
    points: z
      .array(
        z.strictObject({
          xM: z.number(),
          yM: z.number(),
          sigmaM: z.number(),
          px: z.tuple([z.number(), z.number()]),
          halfWidthPx: z.number(),
        }),
      )
      .min(60)
      .optional(),
    marksRmsM: z.number(),
    lens: z.strictObject({
      estimated: z.boolean(),
      focalPx: z.number(),
      centrePx: z.tuple([z.number(), z.number()]),
      k1: z.number(),
      k2: z.number(),
    }),
    marksLeftOut: z.array(z.int()),
    seenShare: z.number(),
    findings,
  }),
  /** The blank could not be followed to the tip. */
  z.strictObject({
    status: z.literal('lost'),
    reason: z.string(),
    reachedPx: z.tuple([z.number(), z.number()]),
    marksRmsM: z.number(),
    findings,
  }),
]);
