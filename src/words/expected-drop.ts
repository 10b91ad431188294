import type { Writer } from './writer.ts';

/** Less is level with the line, as far as an eye tells. */
const levelM = 0.001;

/** What a reading should be: `4 3⁄16 in`, or where the edge lies on the other side of the level line. */
export function expectedInWords(readM: number, way: 'down' | 'up', w: Writer): string {
  if (Math.abs(readM) < levelM) return '0, level with the line';
  const other = way === 'down' ? 'above' : 'below';
  return readM > 0 ? w.length(readM) : `${w.length(-readM)} ${other} the line: type it with a minus`;
}

/** Pale in its field: `about 4 3⁄16 in`. */
export function expectedPale(readM: number, w: Writer): string {
  return `about ${Math.abs(readM) < levelM ? '0' : w.length(readM)}`;
}
