/** What may stand in a field of the record, and the few kinds that the schemas are written in. */
export interface QuantityValue {
  si: number;
  text: string;
}
export type FieldValue = string | number | boolean | QuantityValue | null;

export type FieldKind =
  | { kind: 'text'; maxLength: number }
  | { kind: 'flag' }
  | { kind: 'choice'; of: readonly string[] }
  | { kind: 'number'; min: number; max: number; integer?: boolean }
  /** SI: m, kg, rad, s; bounds are sanity limits of the record, tighter ones belong to the bench checks. */
  | { kind: 'quantity'; dimension: 'length' | 'mass' | 'angle' | 'duration'; min: number; max: number }
  | { kind: 'row'; collection: string }
  /** SHA-256 in lower-case hex of a stored attachment. */
  | { kind: 'attachment' }
  /** ISO 8601 instant in UTC. */
  | { kind: 'instant' };

export interface CollectionSchema {
  single: boolean;
  fields: Record<string, FieldKind>;
}
export type DocumentSchema = Record<string, CollectionSchema>;

export const text = (maxLength = 400): FieldKind => ({ kind: 'text', maxLength });
export const flag: FieldKind = { kind: 'flag' };
export const choice = (...of: string[]): FieldKind => ({ kind: 'choice', of });
export const order: FieldKind = { kind: 'number', min: -1e9, max: 1e9 };
export const count = (min: number, max: number): FieldKind => ({ kind: 'number', min, max, integer: true });
export const real = (min: number, max: number): FieldKind => ({ kind: 'number', min, max });
export const length = (min = 0, max = 10): FieldKind => ({ kind: 'quantity', dimension: 'length', min, max });
export const mass = (min = 0, max = 50): FieldKind => ({ kind: 'quantity', dimension: 'mass', min, max });
export const angle = (): FieldKind => ({
  kind: 'quantity',
  dimension: 'angle',
  min: -Math.PI * 2,
  max: Math.PI * 2,
});
export const duration: FieldKind = { kind: 'quantity', dimension: 'duration', min: 0, max: 60 * 86_400 };
export const row = (collection: string): FieldKind => ({ kind: 'row', collection });
export const instant: FieldKind = { kind: 'instant' };

/** In the currency's smallest unit. */
export const money: FieldKind = { kind: 'number', min: 0, max: 1e11, integer: true };

export const tags: CollectionSchema = { single: false, fields: { text: text(60), gone: flag } };
export const attachments: CollectionSchema = {
  single: false,
  fields: {
    content: { kind: 'attachment' },
    name: text(200),
    type: text(100),
    note: text(2000),
    gone: flag,
  },
};
