import { z } from 'zod';
import { answerLength, finding } from './measures.ts';
import { imagePath } from './trace.ts';

export const scanRequest = z.strictObject({
  op: z.literal('scan'),
  answer: answerLength,
  /** JPEG or PNG of a flatbed scan; a relative path counts from where the command was called. */
  image: imagePath,
  /** Resolution of the scan, dots per inch. */
  dpi: z.number().positive().max(100_000),
});

export const scanAnswer = z.strictObject({
  status: z.literal('converged'),
  guides: z.array(
    z.strictObject({
      centrePx: z.tuple([z.number(), z.number()]),
      lengthM: z.number(),
      offsetM: z.number(),
      angleRad: z.number(),
      quality: z.number(),
    }),
  ),
  findings: z.array(finding),
});
