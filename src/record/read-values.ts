import { type Row, rows, singleRow } from './document.ts';
import type { DocumentState } from './operation.ts';

/** One row of a build, field by field, as what each should be; undefined where it is empty. */
export interface RowReader {
  id: string;
  text(field: string): string | undefined;
  number(field: string): number | undefined;
  flag(field: string): boolean;
  /** SI value of a quantity. */
  si(field: string): number | undefined;
}

export function readRow(row: Row): RowReader {
  const { id, fields } = row;
  return {
    id,
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
  };
}

export function readRows(state: DocumentState, collection: string): RowReader[] {
  return rows(state, collection).map(readRow);
}

export function readSingle(state: DocumentState, collection: string): RowReader {
  return readRow(singleRow(state, collection));
}

/** One of the words a field may hold. */
export function oneOf<T extends string>(value: string | undefined, words: readonly T[]): T | undefined {
  return words.find((word) => word === value);
}
