import type { Writer } from './writer.ts';

/** Less is level with the line, as far as an eye tells. */
const levelM = 0.001;

/** An estimate: above an inch no finer than a pencil marks it. */
function roughly(readM: number, w: Writer): string {
  return readM > 0.0254 ? w.tick(readM) : w.length(readM);
}

/** What a reading should be: `4 1⁄4 in`, or where the edge lies on the other side of the level line. */
export function expectedInWords(readM: number, way: 'down' | 'up', w: Writer): string {
  if (Math.abs(readM) < levelM) return '0, level with the line';
  const other = way === 'down' ? 'above' : 'below';
  return readM > 0 ? roughly(readM, w) : `${roughly(-readM, w)} ${other} the line: type it with a minus`;
}

/** Pale in its field: `about 4 1⁄4 in`. */
export function expectedPale(readM: number, w: Writer): string {
  return `about ${Math.abs(readM) < levelM ? '0' : roughly(readM, w)}`;
}
