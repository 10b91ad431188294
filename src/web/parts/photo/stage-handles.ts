import type { Row } from '../../../record/document.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { textOf } from '../../read/values.ts';
import type { StageHandle } from './photo-handle.tsx';
import type { PhotoReading } from './photo-request.ts';

/** The guides from the tip down with what they are called on every sheet; a ring of no guide is the tip-top's. */
function namedGuides(guides: readonly Row[]): { id: string | undefined; name: string }[] {
  const own = guides.filter((row) => textOf(row, 'kind') !== 'tip-top');
  return [{ id: undefined, name: 'tip-top' }, ...own.map(({ id }, i) => ({ id, name: `guide ${i + 1}` }))];
}

/** Rings are tapped from the tip down: the next one is the first without a tap; undefined once all have one. */
export function nextRing(photo: LoadPhoto, guides: readonly Row[]) {
  const tapped = photo.places.filter(({ role }) => role === 'ring').map(({ guide }) => guide);
  return namedGuides(guides).find(({ id }) => !tapped.includes(id));
}

/** Everything that was tapped, with its name. */
export function handlesOf(photo: LoadPhoto, reading: PhotoReading, guides: readonly Row[]): StageHandle[] {
  const { marks, butt, tip, via, rings } = reading;
  const names = namedGuides(guides);
  const ringName = (guide: string | undefined) => names.find(({ id }) => id === guide)?.name ?? 'a ring';
  const outOfRequest = photo.places.filter(
    ({ id, role }) => (role === 'butt' || role === 'tip') && id !== butt?.id && id !== tip?.id,
  );
  return [
    ...marks.map(({ id, name, px }) => ({ id, px, kind: 'mark' as const, name, short: name })),
    ...via.map(({ id, px }, i) => ({
      id,
      px,
      kind: 'via' as const,
      name: `Point between ${i + 1}`,
      short: '',
    })),
    ...rings.map(({ id, px, guide }) => {
      const name = ringName(guide);
      return { id, px, kind: 'ring' as const, name: `Ring of ${name}`, short: name.replace('guide ', '') };
    }),
    ...[...outOfRequest, ...(butt ? [butt] : []), ...(tip ? [tip] : [])].map(({ id, px, role }) => ({
      id,
      px,
      kind: 'end' as const,
      name: role === 'butt' ? 'Butt end' : 'Tip',
      short: role,
    })),
  ];
}
