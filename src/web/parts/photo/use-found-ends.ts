import { useEffect, useRef, useState } from 'react';
import type { EndsKnown } from '../../../image/index.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { useBuild } from '../../read/build-context.ts';
import { reasonOf } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { api } from '../../store/open-document.ts';
import { openPhotoDesk } from './photo-desk.ts';

/**
 * Looks once for butt and tip in a picture that has neither, where marks and clamp tell where the blank must be; what is
 * not clear is left to two taps. Answers what became of it, in words.
 */
export function useFoundEnds(photo: LoadPhoto, known: EndsKnown | undefined, may: boolean): string {
  const { write } = useBuild();
  const { writer } = useShop();
  const [words, setWords] = useState('');
  const tried = useRef(false);
  const stop = useRef<AbortController>(undefined);
  const { hash } = photo;
  const without = !photo.places.some(({ role }) => role === 'butt' || role === 'tip');
  useEffect(() => {
    if (!may || !known || !hash || !without || tried.current) return;
    tried.current = true;
    const mine = new AbortController();
    stop.current = mine;
    const desk = openPhotoDesk();
    setWords('Looking for butt and tip …');
    desk
      .look(
        { does: 'ends', address: api.attachmentAddress(hash), known },
        { signal: mine.signal, progress: () => undefined },
      )
      .then(
        (answer) => {
          if (answer.status === 'found') {
            write('findEnds', endChanges(photo, answer.ends));
            return setWords('Butt and tip were found. Look at both; move them where they are off.');
          }
          const why = answer.findings.map((one) => sentenceOf(one, writer)).join(' ');
          setWords(`${why} Tap butt and tip.`);
        },
        (error: unknown) => !mine.signal.aborted && setWords(`Tap butt and tip: ${reasonOf(error)}.`),
      )
      .finally(() => desk.close());
  });
  useEffect(() => () => stop.current?.abort(), []);
  return words;
}

/** The same rows on whatever device they are found. */
function endChanges(
  { id, places }: LoadPhoto,
  ends: { butt: readonly [number, number]; tip: readonly [number, number] },
): Change[] {
  return (['butt', 'tip'] as const).flatMap((role, i) =>
    rowChanges('photoPlaces', `${id}-${role}`, {
      photo: id,
      order: places.length + 1 + i,
      role,
      pxX: Number(ends[role][0].toFixed(2)),
      pxY: Number(ends[role][1].toFixed(2)),
      found: 'found',
      gone: null,
    }),
  );
}
