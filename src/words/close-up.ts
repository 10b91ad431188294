import type { CloseUpFound } from '../record/test-report.ts';
import { sentenceOf } from './sentence.ts';
import type { Writer } from './writer.ts';

/** What became of a close-up, one sentence or two. */
export function closeUpWords(
  { photo, joined, why }: CloseUpFound,
  show: (lengthM: number) => string,
  writer: Writer,
): string {
  const name = photo.name ? `The close-up ${photo.name}` : 'The close-up';
  if (!joined) return `${name} is not used: ${why ? sentenceOf(why, writer) : 'it has no curve.'}`;
  const degrees = ((joined.move.turnRad * 180) / Math.PI).toFixed(2).replace('-', '−');
  return (
    `${name} is joined to the whole over ${show(joined.overlapM)}: it lay ${writer.calliper(joined.apartM)} beside ` +
    `it, was turned by ${degrees}°, and ${writer.calliper(joined.leftoverM)} remain.`
  );
}
