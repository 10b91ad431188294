import type { FieldKind, FieldValue } from './schema.ts';
import { z } from './zod.ts';

/** What `dimension` is stored in. */
export const siUnit = { length: 'm', mass: 'kg', angle: 'rad', duration: 's' } as const;

/** Longest text of a quantity as typed. */
const longestQuantityText = 120;

/** Text that survives a UTF-8 file and every database: no NUL, no half of a surrogate pair. */
const storableText = z
  .string()
  .refine((text) => !/\p{Surrogate}/u.test(text) && !text.includes('\0'), 'not storable');

/** Any value a field of some kind might hold; the shape only. */
export const anyFieldValue: z.ZodType<FieldValue> = z.union([
  z.null(),
  z.boolean(),
  z.number(),
  storableText.max(20_000),
  z.strictObject({ si: z.number(), text: storableText.max(longestQuantityText) }),
]);

/** What a field of this kind may hold; null, an empty field, is not among it. */
export function fieldValueSchema(kind: FieldKind): z.ZodType<Exclude<FieldValue, null>> {
  switch (kind.kind) {
    case 'text':
      return storableText.max(kind.maxLength);
    case 'flag':
      return z.boolean();
    case 'choice':
      return z.enum(kind.of as readonly [string, ...string[]]);
    case 'number':
      return (kind.integer ? z.int() : z.number()).min(kind.min).max(kind.max);
    case 'quantity':
      return z.strictObject({
        si: z.number().min(kind.min).max(kind.max),
        text: storableText.max(longestQuantityText),
      });
    case 'row':
      return z.string().regex(rowIdPattern);
    case 'attachment':
      return z.string().regex(/^[0-9a-f]{64}$/);
    case 'instant':
      return z.iso.datetime();
  }
}

/** Ids of rows as devices make them; '-' alone is the row of a single collection. */
export const rowIdPattern = /^(?!-$)[A-Za-z0-9_-]{1,40}$/;

/** The kind in words, for a message: "a length from 0 m to 10 m". */
export function describeKind(kind: FieldKind): string {
  switch (kind.kind) {
    case 'text':
      return `text of at most ${kind.maxLength} characters`;
    case 'flag':
      return 'true or false';
    case 'choice':
      return `one of ${kind.of.join(', ')}`;
    case 'number':
      return `a ${kind.integer ? 'whole ' : ''}number from ${kind.min} to ${kind.max}`;
    case 'quantity': {
      const unit = siUnit[kind.dimension];
      return `${aDimension[kind.dimension]} from ${round(kind.min)} ${unit} to ${round(kind.max)} ${unit}, as { si, text }`;
    }
    case 'row':
      return `the id of a row of ${kind.collection} (letters, digits, - and _)`;
    case 'attachment':
      return "an attachment's SHA-256 in 64 lower-case hex digits";
    case 'instant':
      return 'an instant in UTC such as 2026-03-01T09:30:00Z';
  }
}

/** What a person can do about a value that does not fit. */
export function remedyFor(kind: FieldKind): string {
  switch (kind.kind) {
    case 'text':
      return 'Shorten it, or put the rest into a note';
    case 'quantity':
      return 'Check the unit and the digits';
    case 'choice':
      return 'Pick one of them';
    case 'row':
      return 'Pick a row that exists';
    default:
      return 'Correct it, or leave the field empty';
  }
}

const aDimension = { length: 'a length', mass: 'a mass', angle: 'an angle', duration: 'a duration' } as const;

function round(value: number): number {
  return Number(value.toPrecision(4));
}
