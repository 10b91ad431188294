import type { Currency } from '../engine/quote/money.ts';
import { readQuantity } from '../engine/units/read-quantity.ts';
import type { Dimension, UnitSystem } from '../engine/units/unit-table.ts';
import { allRows } from '../record/document.ts';
import { type DocumentState, deviceFamily, type Path } from '../record/operation.ts';
import { type FieldValue, money } from '../record/schema.ts';
import { findField } from '../record/validate.ts';
import { fieldWords } from './field-words.ts';
import { writeMoney } from './intl.ts';
import { showQuantity } from './quantity-text.ts';

/** What is needed to tell a change as the builder knows it: the document it is in, his units, his money. */
export interface Teller {
  document: DocumentState;
  system: UnitSystem;
  currency: Currency;
}

/** "move guide.k3p9x2ab" is "Move guide"; an undo says what it took back. */
export function labelOf(gesture: string): string {
  const [, verb, target] = /^(undo|redo):\d+:(.*)$/s.exec(gesture) ?? [];
  const label = (target ?? gesture).replace(/\.[^.]*$/, '');
  if (verb) return `${verb === 'undo' ? 'Undid' : 'Did again'}: ${label}`;
  return label.charAt(0).toUpperCase() + label.slice(1);
}

/** "Section tip, length: 45 in → 46 in". */
export function changeWords(path: Path, from: FieldValue, to: FieldValue, teller: Teller): string {
  const { thing } = fieldWords(path);
  const which = rowName(path, teller);
  const place = which === '' ? thing : `${thing} ${which}`;
  if (path[2] === 'gone') return `${place}: ${to === true ? 'put away' : 'brought back'}`;
  return `${place}, ${fieldName(path)}: ${shownValue(path, from, teller)} → ${shownValue(path, to, teller)}`;
}

/** A field as it is called, without what it is of. */
export function fieldName(path: Path): string {
  return fieldWords(path).field;
}

/** A value with its unit, short enough for a line. */
export function shownValue(path: Path, value: FieldValue, teller: Teller): string {
  const { document, system, currency } = teller;
  if (value === null || value === '') return 'empty';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const kind = findField(document.kind, path);
  if (typeof value === 'object') {
    const dimension: Dimension =
      typeof kind === 'object' && kind.kind === 'quantity' ? kind.dimension : 'length';
    return cut(withUnit(showQuantity(value, dimension, system).text, dimension, system));
  }
  if (typeof kind === 'object' && kind.kind === 'instant')
    return new Date(String(value)).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
  if (typeof kind === 'object' && kind.kind === 'row')
    return rowName([kind.collection, String(value), ''], teller) || 'one put away';
  if (typeof kind === 'object' && kind.kind === 'attachment') return 'a file';
  if (kind === money) return writeMoney(Number(value), currency);
  const { unit } = fieldWords(path);
  return cut(unit ? `${value} ${unit}` : String(value));
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
  for (const name of ['name', 'what', 'item', 'text', 'sheet', 'stage']) {
    const value = fields[name];
    if (typeof value === 'string' && value !== '') return cut(value);
  }
  if (collection === 'guides' || collection === 'bag') {
    const place = typeof fields.order === 'number' ? `${fields.order + 1}` : '';
    return [place, fields.kind, fields.size]
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

/** A bare number means what the shop's system says; in a history it says so itself. */
function withUnit(text: string, dimension: Dimension, system: UnitSystem): string {
  if (!/^[\d\s./,-]+$/.test(text)) return text;
  const read = readQuantity(text, { dimension, system });
  return read.ok ? read.understood.replace(/ *=.*$/, '') : text;
}

function cut(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
