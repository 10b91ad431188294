import type { Row } from '../../record/document.ts';
import type { FieldValue, QuantityValue } from '../../record/schema.ts';

/** Reads one field of a row as what it should be; undefined where it is empty. */
export function textOf(row: Row, field: string): string | undefined {
  const value = row.fields[field];
  return typeof value === 'string' ? value : undefined;
}

export function numberOf(row: Row, field: string): number | undefined {
  const value = row.fields[field];
  return typeof value === 'number' ? value : undefined;
}

/** SI value of a quantity. */
export function siOf(row: Row, field: string): number | undefined {
  return quantityOf(row.fields[field])?.si;
}

export function quantityOf(value: FieldValue | undefined): QuantityValue | undefined {
  return value !== null && typeof value === 'object' ? value : undefined;
}

export function flagOf(row: Row, field: string): boolean {
  return row.fields[field] === true;
}
