import { fieldValueSchema, rowIdPattern } from './field-value.ts';
import type { Holds } from './fields/field.ts';
import type { Operation } from './operation.ts';
import { buildSchema, type CollectionSchema, type Field, type FieldValue, shopSchema } from './schema.ts';
import { isHabit } from './shop-habits.ts';
import { engineVersionShape, operationShape } from './validate.ts';
import { z } from './zod.ts';

/**
 * A build file: one build, readable without Fairbend, complete enough to come back equal. Quantities are in SI
 * beside the text as typed. `build` holds the values as they stand, by collection and row; `history` every
 * change ever made, in the order of arrival. A file written by hand needs `format`, `version` and `build` only.
 */
export interface BuildFile {
  format: typeof fileFormat;
  version: number;
  writtenBy?: string;
  build: Record<string, FileRow | FileRow[]>;
  /** Habits of the shop that stood in where the build said nothing; a shop that takes the file keeps its own. */
  habits?: Record<string, FileRow>;
  history?: Operation[];
  /** States frozen by a print: the values after the first `seq` changes of the history. */
  revisions?: FileRevision[];
  attachments?: FileAttachment[];
}

/** Field to value; in a collection of several rows `id` too. Empty fields are left out, or null. */
export type FileRow = Record<string, Exclude<FieldValue, null>>;

export interface FileRevision {
  revision: string;
  seq: number;
  madeAt: string;
  engineVersion: string;
}

export interface FileAttachment {
  /** SHA-256 of the bytes. */
  hash: string;
  type: string;
  base64: string;
}

export const fileFormat = 'fairbend build';
export const fileVersion = 1;
/** Largest build file taken, in bytes. */
export const largestFile = 64 * 1024 ** 2;

export const revisionShape: z.ZodType<FileRevision> = z.strictObject({
  revision: z.string().regex(/^[0-9a-f]{6,64}$/),
  seq: z.int().min(0),
  madeAt: z.iso.datetime(),
  engineVersion: engineVersionShape,
});

const attachment: z.ZodType<FileAttachment> = z.strictObject({
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  type: z.string().max(100),
  base64: z.base64(),
});

/** Everything around the values, which are checked one by one so that each finding can say what it is about. */
export const fileEnvelope = z.strictObject({
  format: z.literal(fileFormat),
  version: z.literal(fileVersion),
  writtenBy: z.string().max(200).optional(),
  build: z.record(z.string(), z.unknown()),
  habits: z.record(z.string(), z.record(z.string(), z.unknown())).optional(),
  history: z.array(z.unknown()).optional(),
  revisions: z.array(revisionShape).optional(),
  attachments: z.array(attachment).optional(),
});

/** The whole file, as published in docs/schema/build-file.schema.json. */
export function buildFileSchema() {
  const collections = Object.entries(buildSchema).map(([name, schema]) => [name, collectionShape(schema)]);
  return fileEnvelope.extend({
    build: z.strictObject(Object.fromEntries(collections)).partial(),
    habits: habitsShape().optional(),
    history: z.array(operationShape).optional(),
  });
}

function habitsShape(): z.ZodType {
  const collections = Object.entries(shopSchema).flatMap(([name, { fields }]) => {
    const carried = Object.entries(fields).filter(([field]) => isHabit(name, field));
    const values = carried.map(([name, field]) => [name, fieldShape(field)]);
    return values.length > 0 ? [[name, z.strictObject(Object.fromEntries(values))]] : [];
  });
  return z.strictObject(Object.fromEntries(collections)).partial();
}

function collectionShape({ single, fields }: CollectionSchema): z.ZodType {
  const values = Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, fieldShape(field)]));
  if (single) return z.strictObject(values);
  return z.array(z.strictObject({ id: z.string().regex(rowIdPattern), ...values }));
}

/** A reader of the file is told what the builder is told. */
function fieldShape(field: Field): z.ZodType {
  const unit = field.kind === 'number' && (field.unit ?? (field.holds && numberUnit[field.holds]));
  return fieldValueSchema(field)
    .nullish()
    .describe(unit ? `${field.name} [${unit}]` : field.name);
}

const numberUnit: Record<Holds, string> = {
  temperature: '°C',
  warmer: 'K',
  volume: 'ml',
  density: 'g/ml',
  money: 'smallest unit of the currency',
};

/** The schema as JSON Schema (draft 2020-12). */
export function buildFileJsonSchema(): object {
  return {
    ...z.toJSONSchema(buildFileSchema(), { unrepresentable: 'any' }),
    title: 'Fairbend build file',
    description:
      'One build. Quantities are in SI (m, kg, rad, s) beside the text as typed. Only format, version and build are needed.',
  };
}
