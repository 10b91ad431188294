import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { FieldValue, QuantityValue } from '../../../record/schema.ts';
import { keptMark } from '../../../words/tape.ts';
import { quantityOf, siOf } from '../../read/values.ts';

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
  return rowChanges('diameters', place.id, { section: section.id, fromOwnTip: place.fromOwnTip });
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

/**
 * A corrected length takes the places along that followed from it; those set by hand stay. A place that was filled in
 * while the shop worked in the other units is known too.
 */
export function changesForLength(section: Row, diameters: readonly Row[], length: FieldValue): Change[] {
  const corrected = quantityOf(length);
  if (!corrected) return [];
  const moves = (['inch', 'mm'] as const).flatMap((system) => {
    const after = suggestedPlaces({ ...section, fields: { length: corrected } }, system);
    return suggestedPlaces(section, system).map((place, i) => ({ ...place, to: after[i].fromOwnTip }));
  });
  return diameters.flatMap((row): Change[] => {
    const at = siOf(row, 'fromOwnTip');
    const move = moves.find(({ id, fromOwnTip }) => id === row.id && isSame(at, fromOwnTip?.si));
    if (!move?.to || isSame(at, move.to.si)) return [];
    return [{ path: ['diameters', row.id, 'fromOwnTip'], value: move.to }];
  });
}

function isSame(aM: number | undefined, bM: number | undefined): boolean {
  return aM !== undefined && bM !== undefined && Math.abs(aM - bM) < 1e-6;
}

/** A place on a tape: to half an inch or 10 mm, so that it is quickly found; the far end is the end itself. */
function placeAt(si: number, end: QuantityValue | undefined, system: UnitSystem): QuantityValue {
  const coarseM = system === 'inch' ? 0.0127 : 0.01;
  if (end)
    return /[a-z"'″′]/i.test(end.text)
      ? end
      : { ...end, text: `${end.text} ${system === 'inch' ? 'in' : 'mm'}` };
  return keptMark(Math.round(si / coarseM) * coarseM, system);
}

function near(a: QuantityValue | undefined, b: QuantityValue | undefined): boolean {
  return a !== undefined && b !== undefined && Math.abs(a.si - b.si) < 0.03;
}
