/**
 * The build record: every place a value can stand, and what may stand there.
 *
 * A document is a flat map from a path (collection, row, field) to a value. Collections marked `single`
 * have one row, named '-'. Other rows are made by writing a field of a new row id and put away by writing
 * `gone: true`. A row points to another row by its id. Adding a field or a collection here needs no
 * migration; changing the meaning of one does (see file.ts).
 *
 * Quantities are stored in SI beside the text as typed: { si: 0.1143, text: '4 1/2 in' }.
 */
import { deliveredCollections } from './schema/build-delivered.ts';
import { madeCollections } from './schema/build-made.ts';
import { measuredCollections } from './schema/build-measured.ts';
import { provedCollections } from './schema/build-proved.ts';
import type { DocumentSchema } from './schema/field-kinds.ts';
import { shopSchema } from './schema/shop.ts';
import { ticketSchema } from './schema/ticket.ts';

export type {
  CollectionSchema,
  DocumentSchema,
  FieldKind,
  FieldValue,
  QuantityValue,
} from './schema/field-kinds.ts';
export { money } from './schema/field-kinds.ts';
export { shopSchema, ticketSchema };

/** One rod's whole record. Stations are distances from the datum (the blank's tip) unless a name says otherwise. */
export const buildSchema: DocumentSchema = {
  ...measuredCollections,
  ...madeCollections,
  ...provedCollections,
  ...deliveredCollections,
};

export const documentSchemas = { build: buildSchema, ticket: ticketSchema, shop: shopSchema } as const;
export type DocumentKind = keyof typeof documentSchemas;
