import { encode } from 'uqr';
import type { Shape } from './drawing.ts';

/** Clear paper round a code, in its own squares (ISO/IEC 18004 asks for 4). */
const quietSquares = 4;

/** A QR code of these words with its clear border, as one shape in a square of this size. */
export function qrShape(words: string, leftMm: number, topMm: number, sizeMm: number): Shape {
  const { data, size } = encode(words, { border: quietSquares });
  const square = sizeMm / size;
  const rings = data.flatMap((row, y) =>
    darkRuns(row).map(([from, to]) => {
      const [x1, x2] = [leftMm + from * square, leftMm + to * square];
      const [y1, y2] = [topMm + y * square, topMm + (y + 1) * square];
      return [
        { xMm: x1, yMm: y1 },
        { xMm: x2, yMm: y1 },
        { xMm: x2, yMm: y2 },
        { xMm: x1, yMm: y2 },
      ];
    }),
  );
  return { kind: 'shape', rings, ink: 'black', name: `code of ${words}` };
}

/** Dark squares of a row that stand side by side, as one, so that no hairline parts them. */
function darkRuns(row: readonly boolean[]): [from: number, to: number][] {
  const runs: [number, number][] = [];
  row.forEach((dark, x) => {
    const last = runs.at(-1);
    if (dark && last?.[1] === x) last[1] = x + 1;
    else if (dark) runs.push([x, x + 1]);
  });
  return runs;
}
