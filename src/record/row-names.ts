/** What sections, set-ups, walls and printers are called: the builder's own word, else what their id or place says. */
import { readQuantity } from '../engine/units/read-quantity.ts';
import type { Row } from './document.ts';
import type { ChoiceKind, FieldValue } from './fields/field.ts';
import { buildSchema } from './schema.ts';

type Named = Pick<Row, 'fields'>;

export function sectionName(row: Named, index: number): string {
  return nameOfRow('sections', row) ?? `section ${index + 1}`;
}

export function setupName(row: Named, index: number): string {
  return nameOfRow('setups', row) ?? `Set-up ${index + 1}`;
}

/** Undefined where neither the builder nor an id names it. */
export function nameOfRow(collection: string, { fields }: Named): string | undefined {
  const { name } = fields;
  if (typeof name === 'string' && name.trim() !== '') return name;
  switch (collection) {
    case 'sections':
      return wordOf('sections', 'part', fields.part);
    case 'setups':
      return placed(fields);
    case 'walls':
      return numbered('Wall', fields.order);
    case 'printers':
      return numbered('Printer', fields.order);
  }
  return undefined;
}

function wordOf(collection: 'sections' | 'setups', field: string, id: FieldValue | undefined) {
  const { names } = buildSchema[collection].fields[field] as ChoiceKind;
  return typeof id === 'string' ? names[id] : undefined;
}

/** A place that was measured out is told by its length. */
function placed({ place, clampFromTip, loadFromTip }: Row['fields']): string | undefined {
  const at = place === 'supports-at' ? loadFromTip : clampFromTip;
  return wordOf('setups', 'place', place)?.replace('…', lengthText(at) ?? '…');
}

/** As it was typed, with the unit that a bare number had. */
function lengthText(value: FieldValue | undefined): string | undefined {
  if (value === null || typeof value !== 'object') return undefined;
  const { si, text } = value;
  if (!/^[\d\s./,⁄-]+$/.test(text)) return text;
  const inches = readQuantity(text, { dimension: 'length', system: 'inch' });
  return `${text} ${inches.ok && Math.abs(inches.si - si) < 1e-9 ? 'in' : 'mm'}`;
}

function numbered(thing: string, order: FieldValue | undefined): string | undefined {
  return typeof order === 'number' ? `${thing} ${order + 1}` : undefined;
}
