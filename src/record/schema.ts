/**
 * The build record: every place a value can stand, and what may stand there, as src/record/fields declares it.
 *
 * A document is a flat map from a path (collection, row, field) to a value. Collections marked `single`
 * have one row, named '-'. Other rows are made by writing a field of a new row id and put away by writing
 * `gone: true`. A row points to another row by its id. Adding a field or a collection needs no
 * migration; changing the meaning of one does (see file-migrations.ts).
 *
 * Quantities are stored in SI beside the text as typed: { si: 0.1143, text: '4 1/2 in' }.
 */
import { about, attachments, tags } from './fields/about.ts';
import { blank, diameters, sections } from './fields/blank.ts';
import {
  benchDone,
  delivery,
  inspection,
  loggedHours,
  parts,
  prints,
  quote,
  quoteHours,
  quoteLines,
} from './fields/delivered.ts';
import type { CollectionSchema, DocumentSchema } from './fields/field.ts';
import { alarmsHeard, coats, finish } from './fields/finish.ts';
import { bag, guides, rack, scans, sorting } from './fields/guides.ts';
import { handle } from './fields/handle.ts';
import { ladder, layout } from './fields/layout.ts';
import { line } from './fields/line.ts';
import {
  loadPhotos,
  loadTests,
  photoDistances,
  photoPlaces,
  proofPlaces,
  proofs,
  traces,
} from './fields/proved.ts';
import { flagChecks, readings, setups, tests, turnings, turnReadings } from './fields/readings.ts';
import { printers, rates, settings } from './fields/shop.ts';
import { stands, wallMarks, walls } from './fields/stands.ts';
import { swings } from './fields/swings.ts';
import { about as aboutRepair, damage, job } from './fields/ticket.ts';
import { twists, twistTest } from './fields/twists.ts';
import { wraps } from './fields/wraps.ts';

export type {
  CollectionSchema,
  DocumentSchema,
  Field,
  FieldKind,
  FieldValue,
  QuantityValue,
} from './fields/field.ts';

/** One rod's whole record. Stations are distances from the datum (the blank's tip) unless a name says otherwise. */
export const buildSchema: DocumentSchema = {
  about,
  blank,
  sections,
  diameters,
  setups,
  tests,
  readings,
  flagChecks,
  turnings,
  turnReadings,
  swings,
  twistTest,
  twists,
  handle,
  line,
  wraps,
  finish,
  coats,
  alarmsHeard,
  bag,
  scans,
  sorting,
  hours: loggedHours,
  guides,
  layout,
  ladder,
  proofs,
  proofPlaces,
  stands,
  loadTests,
  loadPhotos,
  photoPlaces,
  photoDistances,
  traces,
  prints,
  benchDone,
  tags,
  attachments,
  parts,
  quote,
  quoteLines,
  quoteHours,
  inspection,
  delivery,
};

/** A repair. */
export const ticketSchema: DocumentSchema = { about: aboutRepair, job, damage, tags, attachments };

/** Collections of which a shop holds what its builds do not say. */
export const habitCollections = ['wraps', 'finish', 'handle', 'sorting', 'layout'] as const;

/** What holds for every build of the shop. */
export const shopSchema: DocumentSchema = {
  settings,
  ...Object.fromEntries(habitCollections.map((name) => [name, onlyHabits(buildSchema[name])])),
  rack,
  rates,
  printers,
  walls,
  wallMarks,
};

export const documentSchemas = { build: buildSchema, ticket: ticketSchema, shop: shopSchema } as const;
export type DocumentKind = keyof typeof documentSchemas;

function onlyHabits({ fields, ...collection }: CollectionSchema): CollectionSchema {
  const held = Object.entries(fields).filter(([, { habit }]) => habit);
  return { ...collection, fields: Object.fromEntries(held) };
}
