import { readQuantity } from '../../../engine/units/read-quantity.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { siOf } from '../../read/values.ts';

/** A diameter that is measured, or a place where one should be. */
export interface DiameterPlace {
  /** Its row, which a place not yet measured will get. */
  id: string;
  fromOwnTip: QuantityValue | undefined;
  measured: boolean;
}

/**
 * The diameters of a section, from its tip-side end. An unmeasured section is given three places: both ends
 * and the middle. Their row ids follow from the section's, so that two devices filling the same place write
 * the same row.
 */
export function diameterPlaces(section: Row, diameters: readonly Row[], system: UnitSystem): DiameterPlace[] {
  const own = diameters
    .filter((row) => row.fields.section === section.id)
    .map((row) => ({
      id: row.id,
      fromOwnTip: row.fields.fromOwnTip as QuantityValue | undefined,
      measured: true,
    }));
  const suggested = suggestedPlaces(section, system).filter(
    ({ id, fromOwnTip }) => !own.some((row) => row.id === id || near(row.fromOwnTip, fromOwnTip)),
  );
  const shown = own.length >= 3 ? own : [...own, ...suggested].slice(0, Math.max(3, own.length));
  return shown.sort((a, b) => (a.fromOwnTip?.si ?? 9) - (b.fromOwnTip?.si ?? 9));
}

/** Writing the diameter of a place not yet measured makes its row. */
export function changesForPlace(section: Row, place: DiameterPlace): Change[] {
  if (place.measured || !place.fromOwnTip) return [];
  return [
    { path: ['diameters', place.id, 'section'], value: section.id },
    { path: ['diameters', place.id, 'fromOwnTip'], value: place.fromOwnTip },
  ];
}

function suggestedPlaces(section: Row, system: UnitSystem): DiameterPlace[] {
  const lengthM = siOf(section, 'length');
  if (lengthM === undefined) return [];
  return [0, 0.5, 1].map((share, index) => ({
    id: `${section.id}-d${index}`,
    fromOwnTip: placeAt(
      share * lengthM,
      share === 1 ? (section.fields.length as QuantityValue) : undefined,
      system,
    ),
    measured: false,
  }));
}

/** A place on a tape: to half an inch or 10 mm, so that it is quickly found; the far end is the end itself. */
function placeAt(si: number, end: QuantityValue | undefined, system: UnitSystem): QuantityValue {
  if (end) return end;
  const text = system === 'inch' ? `${Math.round(si / 0.0127) / 2} in` : `${Math.round(si * 100) * 10} mm`;
  const read = readQuantity(text, { dimension: 'length', system });
  if (!read.ok) throw new Error(`${text} does not read back`);
  return { si: read.si, text };
}

function near(a: QuantityValue | undefined, b: QuantityValue | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a.si - b.si) < 0.03;
}
