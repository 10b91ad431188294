import { applyOperations, emptyDocument, makeOperations } from './document.ts';
import { migrateFile } from './file-migrations.ts';
import {
  type FileAttachment,
  type FileRevision,
  fileEnvelope,
  fileFormat,
  fileVersion,
  largestFile,
} from './file-shape.ts';
import type { Change, DocumentState, Objection, Operation } from './operation.ts';
import { pathKey, pathOf } from './operation.ts';
import { renumbered } from './renumber.ts';
import { buildSchema, type FieldValue } from './schema.ts';
import { isHabit } from './shop-habits.ts';
import { show, validateOperation, validateValue } from './validate.ts';

/** What a build file says, checked. */
export interface ReadBuild {
  /** The whole history; `state` is what it leaves. */
  operations: Operation[];
  state: DocumentState;
  /** Habits of the shop it comes from, for those who have no shop of their own. */
  habits: DocumentState;
  revisions: FileRevision[];
  attachments: FileAttachment[];
  /** What was taken otherwise than it stands in the file. */
  notes: string[];
}
type ReadResult = { status: 'ok'; build: ReadBuild } | { status: 'refused'; findings: Objection[] };

const ranOff =
  'The counter of its changes had run off. They were counted anew, in the same order; no value is changed';
/** Most findings reported of one file. */
const mostFindings = 20;

/**
 * Reads a build file. Anything it does not know is refused, never dropped. Where `build` and `history` differ
 * (somebody edited the values by hand), `build` holds, and the difference is added to the history.
 * @param at instant to note on changes the file itself does not date
 */
export function readBuildFile(text: string, at: string): ReadResult {
  if (text.length > largestFile) {
    const size = `The file has ${Math.round(text.length / 1024 ** 2)} MB; a build file has at most ${largestFile / 1024 ** 2} MB`;
    return refuse(`${size}. Export it without its attachments`);
  }
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refuse(
      `The file is no JSON, or only a part of one (${(error as Error).message}). Export it again, or fetch it again`,
    );
  }
  return readBuildJson(json, at);
}

function readBuildJson(json: unknown, at: string): ReadResult {
  if (!isRecord(json) || json.format !== fileFormat)
    return refuse(
      `This is no build file: "format" is not "${fileFormat}". Choose a file exported as a build`,
    );
  const { version } = json;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse(`The file's version is ${show(version)}; it takes a whole number from 1`, 'version');
  if (version > fileVersion) {
    const known = `this one reads up to version ${fileVersion}`;
    return refuse(
      `The file has version ${version}, of a newer Fairbend; ${known}. Update Fairbend`,
      'version',
    );
  }
  const envelope = fileEnvelope.safeParse(migrateFile({ ...json, version }, fileVersion));
  if (!envelope.success) {
    const findings = envelope.error.issues.map(({ path, message }) => ({
      path: path.join('/'),
      message: `${path.join('/') || 'The file'}: ${message}. Export it again, or correct it by hand`,
    }));
    return { status: 'refused', findings: findings.slice(0, mostFindings) };
  }
  const { build, habits = {}, history, revisions = [], attachments = [] } = envelope.data;
  const values = readValues(build, history === undefined);
  const carried = readHabits(habits);
  const findings = [...values.findings, ...carried.findings, ...historyFindings(history ?? [])];
  if (findings.length > 0) return { status: 'refused', findings: findings.slice(0, mostFindings) };
  const told = renumbered((history ?? []) as Operation[]);
  const notes = told.changed ? [ranOff] : [];
  const operations = withDifference(told.history, values.changes, at);
  const state = applyOperations(emptyDocument('file', 'build'), operations);
  return { status: 'ok', build: { operations, state, habits: carried.state, revisions, attachments, notes } };
}

/** The values of `build` as changes; rows without any `order` get one from their place where `numberRows`. */
function readValues(build: Record<string, unknown>, numberRows: boolean) {
  const changes: Change[] = [];
  const findings: Objection[] = [];
  const take = (collection: string, row: string, fields: Record<string, unknown>) => {
    for (const [field, value] of Object.entries(fields)) {
      const path = [collection, row, field] as const;
      const wrong = validateValue('build', path, value as FieldValue);
      findings.push(...wrong);
      if (wrong.length === 0) changes.push({ path, value: value as FieldValue });
    }
  };
  for (const [collection, content] of Object.entries(build)) {
    const schema = Object.hasOwn(buildSchema, collection) ? buildSchema[collection] : undefined;
    if (!schema) {
      findings.push(...validateValue('build', [collection, '-', ''], null));
      continue;
    }
    if (schema.single) {
      if (isRecord(content)) take(collection, '-', content);
      else findings.push({ path: collection, message: `${collection} takes one object of fields` });
      continue;
    }
    const rowsRead = readRows(collection, content, findings);
    const number = numberRows && 'order' in schema.fields && !rowsRead.some((row) => 'order' in row.fields);
    for (const [index, { id, fields }] of rowsRead.entries())
      take(collection, id, number ? { ...fields, order: index + 1 } : fields);
  }
  return { changes, findings };
}

function readHabits(habits: Record<string, Record<string, unknown>>) {
  const entries = Object.entries(habits).flatMap(([collection, fields]) =>
    Object.entries(fields).map(([field, value]) => ({
      path: [collection, '-', field] as const,
      value: value as FieldValue,
    })),
  );
  const findings = entries.flatMap(({ path, value }) => {
    const [collection, , field] = path;
    const message = `A build file carries no habit "${collection}/${field}". Take it out, or export the file again`;
    const wrong = isHabit(collection, field) ? validateValue('shop', path, value) : [{ path: '', message }];
    return wrong.map((finding) => ({ ...finding, path: `habits/${collection}/${field}` }));
  });
  const empty = emptyDocument('habits', 'shop');
  const by = { device: 'file', gesture: 'fileHabits', at: '1970-01-01T00:00:00Z' };
  const state = findings.length > 0 ? empty : applyOperations(empty, makeOperations(empty, entries, by));
  return { state, findings };
}

function readRows(collection: string, content: unknown, findings: Objection[]) {
  if (!Array.isArray(content)) {
    findings.push({ path: collection, message: `${collection} takes a list of rows, each with its id` });
    return [];
  }
  const ids = new Set<string>();
  return content.flatMap((row: unknown, index) => {
    const at = `${collection}/${index}`;
    if (!isRecord(row) || typeof row.id !== 'string') {
      findings.push({ path: at, message: `Row ${index + 1} of ${collection} has no id. Give it one` });
      return [];
    }
    const { id, ...fields } = row as { id: string };
    if (ids.has(id)) {
      const message = `Two rows of ${collection} have the id ${show(id)}. Give one another`;
      findings.push({ path: `${at}/id`, message });
    }
    ids.add(id);
    return [{ id, fields: fields as Record<string, unknown> }];
  });
}

function historyFindings(history: readonly unknown[]): Objection[] {
  const ids = new Set<string>();
  return history.flatMap((entry, index) => {
    const findings = validateOperation('build', entry);
    const id = (entry as Operation | undefined)?.id ?? '';
    if (findings.length === 0 && ids.has(id))
      findings.push({ path: 'id', message: `id ${show(id)} comes twice. Export the file again` });
    ids.add(id);
    return findings.map(({ path, message }) => ({ path: `history/${index}/${path}`, message }));
  });
}

/** The history, and after it whatever `build` says otherwise; no field of the history is left unsaid by it. */
function withDifference(history: readonly Operation[], changes: readonly Change[], at: string): Operation[] {
  const state = applyOperations(emptyDocument('file', 'build'), history);
  const said = new Set(changes.map((change) => pathKey(change.path)));
  const cleared = [...state.cells.keys()]
    .filter((key) => !said.has(key))
    .map((key): Change => ({ path: pathOf(key), value: null }));
  const by = { device: 'file', gesture: history.length > 0 ? 'editedInFile' : 'import', at };
  return [...history, ...makeOperations(state, [...changes, ...cleared], by)];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function refuse(message: string, path = ''): ReadResult {
  return { status: 'refused', findings: [{ path, message }] };
}
