/** The few words that declarations are written in. */
import type {
  ChoiceKind,
  CollectionSchema,
  Field,
  Fields,
  FieldWords,
  Fineness,
  Holds,
  NumberKind,
  Origin,
  QuantityKind,
  TextKind,
} from './field.ts';

type More = Omit<FieldWords, 'name'>;
type Bounds = readonly [min: number, max: number];

export function single(thing: string, fields: Fields): CollectionSchema {
  return { thing, single: true, fields };
}

/** Rows, each of which may be put away. */
export function many(thing: string, fields: Fields): CollectionSchema {
  return { thing, single: false, fields: { ...fields, gone: flag('removed') } };
}

/** Fields that a shop may hold for all its builds. */
export function habits<F extends Fields>(fields: F): F {
  return Object.fromEntries(
    Object.entries(fields).map(([field, declared]) => [field, { ...declared, habit: true }]),
  ) as F;
}

export function text(
  name: string,
  maxLength = 400,
  more: More & Partial<Pick<TextKind, 'names'>> = {},
): Field {
  return { kind: 'text', maxLength, name, ...more };
}

/** A thread's, for the drawing. */
export function colour(name: string, usual: string): Field {
  return { kind: 'text', maxLength: 20, colour: true, name, usual };
}

export function flag(name: string, more: More = {}): Field {
  return { kind: 'flag', name, ...more };
}

/** Options as the record keeps them, each with its words; a list where they are the same. */
export function choice(
  name: string,
  options: Readonly<Record<string, string>> | readonly string[],
  more: More = {},
): ChoiceKind & FieldWords {
  const names: Record<string, string> = Array.isArray(options)
    ? Object.fromEntries(options.map((one: string) => [one, one]))
    : { ...(options as Record<string, string>) };
  return { kind: 'choice', of: Object.keys(names), names, name, ...more };
}

/** What kinds are called, by their ids. */
export function namesOf(kinds: readonly { id: string; name: string }[]): Record<string, string> {
  return Object.fromEntries(kinds.map(({ id, name }) => [id, name]));
}

export function order(name = 'place in the list'): Field {
  return { kind: 'number', min: -1e9, max: 1e9, name };
}

type NumberMore = More & Pick<NumberKind, 'unit'>;

export function count(name: string, [min, max]: Bounds, more: NumberMore = {}): Field {
  return { kind: 'number', min, max, integer: true, name, ...more };
}

export function real(name: string, [min, max]: Bounds, more: NumberMore = {}): Field {
  return { kind: 'number', min, max, name, ...more };
}

export function percent(name: string, bounds: Bounds, more: More = {}): Field {
  return real(name, bounds, { unit: '%', ...more });
}

/** °C of a thermometer. */
export function temperature(name: string, more: More = {}): Field {
  return holding('temperature', name, [-20, 60], { likely: [0, 45], ...more });
}

/** A plain number of the record that stands for a quantity. */
export function holding(holds: Holds, name: string, [min, max]: Bounds, more: More = {}): Field {
  return { kind: 'number', min, max, holds, name, ...more };
}

/** In the currency's smallest unit. */
export function money(name: string, more: More = {}): Field {
  return { kind: 'number', min: 0, max: 1e11, integer: true, holds: 'money', name, ...more };
}

/** Along the rod, as a tape reads it. */
export function length(name: string, bounds: Bounds = [0, 10], more: More = {}): Field {
  return quantity('length', name, bounds, more);
}

/** A length of a kind that is read finer, or over a long run. */
export function lengthAt(fineness: Fineness) {
  return (name: string, bounds: Bounds, more: More = {}): Field =>
    quantity('length', name, bounds, { fineness, ...more });
}
/** As a rule held to it reads. */
export const rule = lengthAt('fine');
/** As callipers read it. */
export const calliper = lengthAt('calliper');

export function mass(name: string, bounds: Bounds = [0, 50], more: More = {}): Field {
  return quantity('mass', name, bounds, more);
}

export function angle(name: string, more: More = {}): Field {
  return quantity('angle', name, [-Math.PI * 2, Math.PI * 2], more);
}

export function duration(name: string, more: More = {}): Field {
  return quantity('duration', name, [0, 60 * 86_400], more);
}

export function row(name: string, collection: string): Field {
  return { kind: 'row', collection, name };
}

export function instant(name: string): Field {
  return { kind: 'instant', name };
}

export function day(name: string): Field {
  return { kind: 'instant', day: true, name };
}

/** Common practice, no source; as far as the trade's texts go. */
export function trade(low?: number, high?: number, note?: string): Origin {
  return { by: 'trade', ...(low === undefined || high === undefined ? {} : { range: [low, high] }), note };
}

export function tradeSays(note: string): Origin {
  return { by: 'trade', note };
}

/** A figure of ours, without a range of the trade behind it. */
export const ours: Origin = { by: 'us' };

function quantity(dimension: QuantityKind['dimension'], name: string, [min, max]: Bounds, more: More): Field {
  return { kind: 'quantity', dimension, min, max, name, ...more };
}

export const hours = (h: number): number => h * 3600;
export const days = (d: number): number => d * 86_400;
