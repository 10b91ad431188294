import type { Path } from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';
import type { FieldPlace } from './place.ts';

/** What holds while a field is empty, and where that comes from. */
export interface Standard {
  value: FieldValue;
  text: string | undefined;
  from: string | undefined;
}

/** The shop's habit before common practice; `common` as it is to be read, such as `2.5 mm`. */
export function standardOf(place: FieldPlace, path: Path, common: string | undefined): Standard {
  const value = place.habit?.(path) ?? null;
  if (value !== null) return { value, text: habitText(value), from: 'this shop’s habit' };
  return { value: null, text: common, from: common === undefined ? undefined : 'common practice' };
}

function habitText(value: Exclude<FieldValue, null>): string {
  if (typeof value === 'object') return value.text;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
}
