import { type Change, rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto, PlaceRole } from '../../../record/read-load-photo.ts';

/** To a tenth of a pixel: finer than any finger, coarse enough to read in a history. */
function pixels([x, y]: readonly [number, number]): Record<'pxX' | 'pxY', number> {
  return { pxX: Number(x.toFixed(1)), pxY: Number(y.toFixed(1)) };
}

/** A tap that sets a place: butt and tip there is one of, so a second tap moves it. */
export function setPlace(
  photo: LoadPhoto,
  role: PlaceRole,
  px: readonly [number, number],
  { id, guide }: { id: string; guide?: string },
): Change[] {
  const standing =
    role === 'butt' || role === 'tip' ? photo.places.find((place) => place.role === role) : undefined;
  if (standing) return movePlace(standing.id, px);
  const first =
    role === 'mark' && photo.marksBy !== 'rectangle' && !photo.places.some((place) => place.role === 'mark');
  return rowChanges('photoPlaces', id, {
    photo: photo.id,
    order: photo.places.length + 1,
    role,
    ...pixels(px),
    found: 'tapped',
    ...(guide ? { guide } : {}),
    // Places are counted from the first mark.
    ...(first ? { atX: { si: 0, text: '0' }, atY: { si: 0, text: '0' } } : {}),
  });
}

export function movePlace(id: string, px: readonly [number, number]): Change[] {
  return rowChanges('photoPlaces', id, { ...pixels(px), found: 'tapped' });
}

export function removePlace(id: string): Change[] {
  return rowChanges('photoPlaces', id, { gone: true });
}
