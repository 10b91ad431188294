import { allRows, applyOperations, emptyDocument } from './document.ts';
import {
  type BuildFile,
  type FileAttachment,
  type FileRevision,
  type FileRow,
  fileFormat,
  fileVersion,
} from './file-shape.ts';
import type { DocumentState, Operation } from './operation.ts';
import { type DocumentSchema, documentSchemas, type FieldValue } from './schema.ts';

interface FileParts {
  /** All operations in the order of arrival. */
  history: readonly Operation[];
  revisions?: FileRevision[];
  attachments?: FileAttachment[];
  /** Of the shop, as `habitsOf` picks them. */
  habits?: DocumentState;
  writtenBy?: string;
}

/** The build file of a history. */
export function buildFileOf({ history, revisions, attachments, habits, writtenBy }: FileParts): BuildFile {
  return {
    format: fileFormat,
    version: fileVersion,
    ...(writtenBy ? { writtenBy } : {}),
    build: valuesByRow(applyOperations(emptyDocument('file', 'build'), history)),
    ...(habits?.cells.size ? { habits: valuesByRow(habits) as BuildFile['habits'] } : {}),
    history: history.map(bare),
    ...(revisions?.length ? { revisions } : {}),
    ...(attachments?.length ? { attachments } : {}),
  };
}

/** The file as text: one line for every value that fits on one, so that people and diffs can read it. */
export function writeBuildFile(file: BuildFile): string {
  return `${layOut(file, '')}\n`;
}

/** Values as they stand, rows put away included, in the order of the schema. */
export function valuesByRow(state: DocumentState): BuildFile['build'] {
  const values: BuildFile['build'] = {};
  for (const [name, { single, fields }] of Object.entries(documentSchemas[state.kind] as DocumentSchema)) {
    const found = allRows(state, name).map((row) => ({ id: row.id, ...inOrder(row.fields, fields) }));
    if (found.length === 0) continue;
    if (!single) values[name] = found;
    else values[name] = withoutId(found[0]);
  }
  return values;
}

function inOrder(values: Readonly<Record<string, FieldValue>>, fields: object): FileRow {
  const names = Object.keys(fields).filter((name) => values[name] !== undefined && values[name] !== null);
  return Object.fromEntries(names.map((name) => [name, values[name]])) as FileRow;
}

function withoutId({ id: _, ...fields }: FileRow): FileRow {
  return fields;
}

/** Without what the server notes about its arrival. */
function bare({ id, device, clock, gesture, path, old, value, at }: Operation): Operation {
  return { id, device, clock, gesture, path, old, value, at };
}

/** Longest line; strings are never broken. */
const longestLine = 150;

/** JSON with one line for every value that fits on one. */
export function layOut(value: unknown, indent: string): string {
  const line = JSON.stringify(value);
  if (line.length + indent.length <= longestLine || value === null || typeof value !== 'object') return line;
  const inner = `${indent}  `;
  const items = Array.isArray(value)
    ? value.map((item) => layOut(item, inner))
    : Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${layOut(item, inner)}`);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${items.map((item) => inner + item).join(',\n')}\n${indent}${close}`;
}
