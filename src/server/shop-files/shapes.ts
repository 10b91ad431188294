import { z } from 'zod';
import { revisionShape } from '../../record/file-shape.ts';

/**
 * A whole shop as plain files:
 *
 *   fairbend-shop.json            what this is, and every file with its size and SHA-256
 *   shop.json                     what holds for all builds
 *   builds/TITLE-ID.json          one build: its values as they stand, and every change ever made
 *   repairs/TITLE-ID.json         one repair
 *   attachments/SHA256.EXT        pictures and papers, as they are
 *
 * Readable without Fairbend. Names in an archive are compared with this pattern and never used as given.
 */
export const manifestName = 'fairbend-shop.json';
export const fileName =
  /^(shop\.json|(builds|repairs)\/[A-Za-z0-9_-]{1,120}\.json|attachments\/[0-9a-f]{64}\.[a-z]{3,4})$/;

export const shopFormat = 'fairbend shop';
export const documentFormat = 'fairbend document';

/** Most printed states of one document: thirty prints a day for a year. */
const mostRevisions = 10_000;

/** Most bytes of one document's file, and of one attachment. */
export const largestDocument = 256 * 1024 ** 2;
export const largestAttachment = 64 * 1024 ** 2;
export const largestManifest = 64 * 1024 ** 2;

const hash = z.string().regex(/^[0-9a-f]{64}$/);

export interface ShopManifest {
  format: typeof shopFormat;
  version: 1;
  writtenBy: string;
  madeAt: string;
  files: { name: string; bytes: number; sha256: string }[];
  /** When each attachment was taken in, and what it is. */
  attachments: { hash: string; type: string; addedAt: string }[];
  /** What of the record was damaged and is not among the files; absent where all of it was good. */
  leftOut?: { id: string; title: string; what: string }[];
}

export const manifestShape: z.ZodType<ShopManifest> = z.strictObject({
  format: z.literal(shopFormat),
  version: z.literal(1),
  writtenBy: z.string().max(200),
  madeAt: z.iso.datetime(),
  files: z.array(
    z.strictObject({
      name: z.string().regex(fileName),
      bytes: z.int().min(0).max(largestDocument),
      sha256: hash,
    }),
  ),
  attachments: z.array(z.strictObject({ hash, type: z.string().max(100), addedAt: z.iso.datetime() })),
  leftOut: z.array(z.strictObject({ id: z.string(), title: z.string(), what: z.string() })).optional(),
});

const stored = z.looseObject({ seq: z.int().min(1), receivedAt: z.iso.datetime() });

/** The history is checked change by change afterwards, so that a finding can say which. */
export const documentShape = z.strictObject({
  format: z.literal(documentFormat),
  version: z.literal(1),
  id: z.string().regex(/^[A-Za-z0-9_-]{1,60}$/),
  kind: z.enum(['build', 'ticket', 'shop']),
  gone: z.boolean(),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
  values: z.record(z.string(), z.unknown()),
  history: z.array(stored),
  revisions: z.array(revisionShape).max(mostRevisions),
});
