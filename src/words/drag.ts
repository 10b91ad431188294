import type { Writer } from './writer.ts';

/** Which loads of the ladder the line ever sees: above the drag's setting it slips. */
export function dragInWords(dragKg: number, loadsKg: readonly number[], w: Writer): string {
  const slips = `The drag slips at ${w.load(dragKg)}.`;
  const above = loadsKg.filter((kg) => kg > dragKg).map((kg) => w.load(kg));
  if (above.length === 0) return `${slips} The line can carry every load of the ladder.`;
  return `${slips} It never lets ${above.join(' or ')} through the line; such a load only tests the blank.`;
}
