import { commonOrigin, commonValueOf } from '../../record/common-practice.ts';
import type { Path } from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';
import type { FieldPlace } from './place.ts';

/** What holds while a field is empty, and where that comes from. */
export interface Standard {
  value: FieldValue;
  text: string | undefined;
  from: string | undefined;
}

/** The shop's habit before common practice, with the trade's range beside either. */
export function standardOf(place: FieldPlace, path: Path): Standard {
  const value = place.habit?.(path) ?? null;
  const common = commonValueOf(path);
  if (value === null) return { value, text: common?.text, from: common && commonOrigin(common) };
  const usual = common?.range ? `, usual ${common.range}` : '';
  return { value, text: habitText(value), from: `this shop’s habit${usual}` };
}

function habitText(value: Exclude<FieldValue, null>): string {
  if (typeof value === 'object') return value.text;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
}
