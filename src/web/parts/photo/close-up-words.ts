import type { CloseUpUse } from '../../../record/joined-curve.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { siWriter } from '../../../words/writer.ts';
import type { ShowLength } from './photo-request.ts';

/** What became of a close-up, one sentence or two. */
export function closeUpWords({ photo, joined, why }: CloseUpUse, show: ShowLength): string {
  const name = photo.name ? `The close-up ${photo.name}` : 'The close-up';
  if (!joined) return `${name} is not used: ${why ? sentenceOf(why, siWriter) : 'it has no curve'}.`;
  const mm = (lengthM: number) => `${(lengthM * 1000).toFixed(1)} mm`;
  const degrees = ((joined.move.turnRad * 180) / Math.PI).toFixed(2).replace('-', '−');
  return (
    `${name} is joined to the whole over ${show(joined.overlapM)}: it lay ${mm(joined.apartM)} beside ` +
    `it, was turned by ${degrees}°, and ${mm(joined.leftoverM)} remain.`
  );
}
