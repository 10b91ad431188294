/** What was found on the day a load test was accepted: kept as data, said anew in the reader's units. */
import type { Reason } from '../engine/finding.ts';
import type { TraceNote } from './trace-notes.ts';
import { z } from './zod.ts';

/** Room in the record. */
const mostCharacters = 20_000;

export interface TestReport {
  rod: 'taped' | 'bare';
  hungKg?: number;
  /** By the picture. */
  buttAngleRad: number;
  lengthM: number;
  /** Its file's name. */
  picture: string;
  readOn: string;
  marksRmsM: number;
  engineVersion: string;
  closeUps: CloseUpFound[];
  /** Tip first; off the prediction by `apartM`, `reachM` allowed. */
  places: { fromTipM: number; outM: number; upM: number; apartM: number; reachM?: number }[];
  doubts: Reason[];
  /** Sentences only where the picture was read by version 0.1. */
  odd: TraceNote[];
  /** What the marks are called that `odd` counts, spaces as hyphens. */
  marks: string[];
}
/** What became of a close-up. */
export interface CloseUpFound {
  photo: { name: string };
  /** Undefined where it was not joined. */
  joined?: { move: { turnRad: number }; overlapM: number; apartM: number; leftoverM: number };
  why?: Reason;
}

const number = z.number();
const value = z.union([z.string(), number, z.boolean(), z.undefined()]);
const list = z.array(z.union([z.string(), number])).readonly();
const reason = z.object({ code: z.string(), values: z.record(z.string(), z.union([value, list])) });
const joined = z.object({
  move: z.object({ turnRad: number }),
  overlapM: number,
  apartM: number,
  leftoverM: number,
});
const shape: z.ZodType<TestReport> = z.object({
  rod: z.enum(['taped', 'bare']),
  hungKg: number.optional(),
  buttAngleRad: number,
  lengthM: number,
  picture: z.string(),
  readOn: z.string(),
  marksRmsM: number,
  engineVersion: z.string(),
  closeUps: z.array(
    z.object({
      photo: z.object({ name: z.string() }),
      joined: joined.optional(),
      why: reason.optional(),
    }),
  ),
  places: z.array(
    z.object({ fromTipM: number, outM: number, upM: number, apartM: number, reachM: number.optional() }),
  ),
  doubts: z.array(reason),
  odd: z.array(z.union([z.string(), reason.extend({ path: z.string() })])),
  marks: z.array(z.string()),
});

/** As the record keeps it; where there is no room the last of what was odd is left out. */
export function testReportText(found: TestReport): string {
  const report = { ...shape.parse(found) };
  const text = () => JSON.stringify(report);
  while (text().length > mostCharacters && report.odd.length > 0) report.odd = report.odd.slice(0, -1);
  return text();
}

/** Of records of 0.1 the text that was kept then; undefined where there is none, or nothing to be read. */
export function testReportOf(text: string | undefined): TestReport | string | undefined {
  if (!text?.startsWith('{')) return text;
  try {
    return shape.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}
