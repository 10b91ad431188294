import { type Row, rows, singleRow } from './document.ts';
import type { Fields } from './fields/field.ts';
import type { DocumentState } from './operation.ts';
import { documentSchemas } from './schema.ts';

/** One row of a build, field by field, as what each should be; undefined where it is empty. */
export interface RowReader extends Row {
  text(field: string): string | undefined;
  number(field: string): number | undefined;
  flag(field: string): boolean;
  /** SI value of a quantity. */
  si(field: string): number | undefined;
  /** What is written, SI or a number, or what its declaration says holds while it is empty. */
  orUsual(field: string): number;
}

function readRow({ id, fields }: Row, declared: Fields): RowReader {
  return {
    id,
    fields,
    text: (field) => {
      const value = fields[field];
      return typeof value === 'string' && value.trim() !== '' ? value : undefined;
    },
    number: (field) => {
      const value = fields[field];
      return typeof value === 'number' ? value : undefined;
    },
    flag: (field) => fields[field] === true,
    si: (field) => {
      const value = fields[field];
      return value !== null && typeof value === 'object' ? value.si : undefined;
    },
    orUsual: (field) => {
      const value = fields[field] ?? declared[field].usual;
      if (typeof value === 'number') return value;
      if (value !== null && typeof value === 'object') return value.si;
      throw new Error(`no number is declared to hold while ${field} is empty`);
    },
  };
}

export function readRows(state: DocumentState, collection: string): RowReader[] {
  return rows(state, collection).map((row) => readRow(row, fieldsOf(state, collection)));
}

export function readSingle(state: DocumentState, collection: string): RowReader {
  return readRow(singleRow(state, collection), fieldsOf(state, collection));
}

function fieldsOf({ kind }: DocumentState, collection: string): Fields {
  return documentSchemas[kind][collection].fields;
}

/** One of the words a field may hold. */
export function oneOf<T extends string>(value: string | undefined, words: readonly T[]): T | undefined {
  return words.find((word) => word === value);
}
