import { useEffect, useRef, useState } from 'react';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import { fewestMarks, placesOn, readWalls, type Wall, wallOfMarks } from '../../../record/read-walls.ts';
import { useBuild } from '../../read/build-context.ts';
import { reasonOf } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { api } from '../../store/open-document.ts';
import { foundMarkChanges, repeatedNumbers } from './found-marks.ts';
import { openPhotoDesk } from './photo-desk.ts';

export interface FoundMarksState {
  looking: boolean;
  words: string;
  look(): void;
}

/**
 * Looks for printed marks in a picture nobody has tapped on yet, once, and whenever it is asked to; `unaskedHere`: by
 * itself on this device. A desk of its own: a curve that is read meanwhile is not stopped by it.
 */
export function useFoundMarks(photo: LoadPhoto, unaskedHere = true): FoundMarksState {
  const { write, rows } = useBuild();
  const shop = useShop();
  const [words, setWords] = useState('');
  const [looking, setLooking] = useState(false);
  const stop = useRef<AbortController>(undefined);
  const looked = useRef(false);

  const look = (unasked: boolean) => {
    if (!photo.hash) return;
    stop.current?.abort();
    const mine = new AbortController();
    stop.current = mine;
    const desk = openPhotoDesk();
    setLooking(true);
    setWords('Looking for printed marks …');
    desk
      .look(
        { does: 'find', address: api.attachmentAddress(photo.hash) },
        { signal: mine.signal, progress: () => undefined },
      )
      .then(
        (found) => {
          const walls = readWalls(shop.document);
          if (found.length > 0)
            write('findMarks', foundMarkChanges(photo, found, rows('photoPlaces'), walls));
          const numbers = [...new Set(found.map(({ number }) => number))];
          setWords(`${foundWords(numbers, repeatedNumbers(found), unasked)}${wallWords(walls, numbers)}`);
        },
        (error: unknown) => {
          if (!mine.signal.aborted) setWords(`The marks were not looked for: ${reasonOf(error)}.`);
        },
      )
      .finally(() => {
        desk.close();
        if (stop.current === mine) setLooking(false);
      });
  };
  const untouched = photo.places.length === 0 && !photo.trace;
  useEffect(() => {
    if (untouched && unaskedHere && !looked.current) look(true);
    looked.current = true;
  }, [photo.id]);
  useEffect(() => () => stop.current?.abort(), []);
  return { looking, words, look: () => look(false) };
}

function foundWords(numbers: readonly number[], repeated: readonly number[], unasked: boolean): string {
  if (numbers.length === 0) {
    return unasked
      ? 'No printed marks were found: tap your own.'
      : 'No printed marks were found. They must be flat, whole and at least some 26 pixels across; else tap your own.';
  }
  const list = numbers.join(', ');
  const twice =
    repeated.length > 0
      ? ` Number ${repeated.join(', ')} stands there twice: one of two was taken; take the other off the wall, or out of the mirror.`
      : '';
  const few = numbers.length < fewestMarks ? ' At least four are needed: tap others of known place.' : '';
  return `Printed marks found: ${list}.${few}${twice}`;
}

/** Whose marks they are, where the shop keeps walls. */
function wallWords(walls: readonly Wall[], numbers: readonly number[]): string {
  if (walls.length === 0 || numbers.length < fewestMarks) return '';
  const wall = wallOfMarks(walls, numbers);
  if (!wall)
    return ' No wall in Settings has four of these marks: measure their places, or use the right wall.';
  const strange = numbers.filter((number) => !placesOn(wall, numbers).has(number));
  const left = strange.length > 0 ? ` Mark ${strange.join(', ')} is not on it and is left out.` : '';
  return ` Their places are those of ${wall.name}.${left}`;
}
