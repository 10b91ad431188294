import { allRows } from '../record/document.ts';
import { type DocumentState, deviceFamily, type Path } from '../record/operation.ts';
import { nameOfRow } from '../record/row-names.ts';
import { documentSchemas, type Field, type FieldValue } from '../record/schema.ts';
import { findField } from '../record/validate.ts';
import { numberText, type Reader } from './field-text.ts';
import { dayWords, instantWords } from './intl.ts';
import { showQuantity, withUnit } from './quantity-text.ts';

/** What is needed to tell a change as the builder knows it: the document it is in, his units, his money. */
export interface Teller extends Reader {
  document: DocumentState;
}

/** "Section tip, length: 45 in → 46 in". */
export function changeWords(path: Path, from: FieldValue, to: FieldValue, teller: Teller): string {
  const thing = thingOf(path, teller.document);
  const which = rowName(path, teller);
  const place = which.startsWith(thing) ? which : `${thing} ${which}`.trimEnd();
  if (path[2] === 'gone') return `${place}: ${to === true ? 'removed' : 'brought back'}`;
  const name = fieldName(path, teller.document);
  return `${place}, ${name}: ${shownValue(path, from, teller)} → ${shownValue(path, to, teller)}`;
}

/** A field as it is called, without what it is of. */
export function fieldName(path: Path, { kind }: Pick<DocumentState, 'kind'>): string {
  return fieldAt(path, kind)?.name ?? path[2];
}

function thingOf([collection]: Path, { kind }: DocumentState): string {
  const schema = documentSchemas[kind];
  return Object.hasOwn(schema, collection) ? schema[collection].thing : collection;
}

function fieldAt(path: Path, kind: DocumentState['kind']): Field | undefined {
  const found = findField(kind, path);
  return typeof found === 'string' ? undefined : found;
}

/** A value with its unit, short enough for a line. */
export function shownValue(path: Path, value: FieldValue, teller: Teller): string {
  if (value === null || value === '') return 'empty';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const field = fieldAt(path, teller.document.kind);
  if (typeof value === 'object') {
    const dimension = field?.kind === 'quantity' ? field.dimension : 'length';
    return cut(withUnit(showQuantity(value, dimension, teller.units).text, dimension, teller.units));
  }
  switch (field?.kind) {
    case 'instant':
      return field.day ? dayWords(String(value)) : instantWords(String(value));
    case 'row':
      return rowName([field.collection, String(value), ''], teller) || 'one removed';
    case 'attachment':
      return 'a file';
    case 'number':
      return cut(numberText(field, Number(value), teller));
    case 'choice':
      return field.names[String(value)] ?? cut(String(value));
    case 'text':
      return cut(field.names?.[String(value)] ?? (isData(String(value)) ? 'figures' : String(value)));
    default:
      return cut(String(value));
  }
}

/** Whose change: this browser's, the server's own, or another's by the name its device gave itself. */
export function whoseWords(device: string, own: string): string {
  const family = deviceFamily(device);
  if (family === deviceFamily(own)) return 'this device';
  return family === 'server' ? 'the shop’s computer' : `device ${family.slice(0, 4)}`;
}

/** What tells a row from its neighbours: its name, or the station or weight it stands for. */
function rowName([collection, id]: Path, teller: Teller): string {
  const { document } = teller;
  if (id === '-') return '';
  const row = allRows(document, collection).find((one) => one.id === id);
  const fields = row?.fields ?? {};
  const called = nameOfRow(collection, { fields });
  if (called) return cut(called);
  for (const name of ['what', 'item', 'text', 'sheet', 'stage']) {
    const value = fields[name];
    if (typeof value === 'string' && value !== '') return cut(value);
  }
  if (collection === 'guides' || collection === 'bag') {
    return [placeAmong(document, collection, id), fields.kind, fields.size]
      .filter((word) => typeof word === 'string' && word !== '')
      .join(' ');
  }
  for (const name of ['fromTip', 'fromOwnTip', 'hung', 'load']) {
    if (fields[name])
      return `at ${shownValue([collection, id, name], fields[name], teller)}`.replace(
        /^at (?=\S+ (g|kg|oz|lb)$)/,
        'of ',
      );
  }
  return '';
}

/** Guides are counted from 1 at the tip, whatever number their order begins with; one removed keeps its place. */
function placeAmong(document: DocumentState, collection: string, id: string): string {
  const standing = allRows(document, collection).filter((row) => !row.fields.gone || row.id === id);
  return `${standing.findIndex((row) => row.id === id) + 1}`;
}

/** What was found on a day, or in a picture, is kept as data. */
function isData(text: string): boolean {
  return text.startsWith('{"') || text.startsWith('[{"');
}

function cut(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
