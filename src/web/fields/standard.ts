import type { Path } from '../../record/operation.ts';
import type { Field, FieldValue } from '../../record/schema.ts';
import { originText, paleText, type Reader, rangeText, storedText } from '../../words/field-text.ts';
import type { FieldPlace } from './place.ts';

/** What holds while a field is empty, and where that comes from. */
export interface Standard {
  value: FieldValue;
  text: string | undefined;
  from: string | undefined;
}

/** The shop's habit before common practice, with the trade's range beside either. */
export function standardOf(place: FieldPlace, path: Path, field: Field, reader: Reader): Standard {
  const value = place.habit?.(path) ?? null;
  if (value === null) {
    const usual = field.usual ?? null;
    return { value: usual, text: paleText(field, reader), from: originText(field, reader) };
  }
  const range = rangeText(field, reader);
  const from = range ? `your shop’s; typical ${range}` : 'your shop’s';
  return { value, text: storedText(field, value, reader), from };
}
