/** The printed marks, read back: by poppler's renderer and our own finder where poppler is installed. */

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { inWords } from '../../test/support/in-words.ts';
import { paperFonts } from '../cli/paper-fonts.ts';
import { decodeImage, findMarks } from '../image/index.ts';
import type { Line, Shape, Sheet } from '../sheets/drawing.ts';
import { pageSvg } from '../sheets/svg.ts';
import { wallMarkRadiusMm, wallMarksSheet } from '../sheets/wall-marks-sheet.ts';
import { sheetsPdf } from './sheet-pdf.ts';

const printedAt = new Date('2026-01-02T03:04:05Z');
const fonts = paperFonts();
const bytesOf = async (sheets: readonly Sheet[], title = 't') =>
  (await sheetsPdf(sheets, { title, printedAt, fonts })).bytes;
const drawn = (paper: 'a4' | 'letter') => wallMarksSheet({ paper, stamp: 'invented', count: 5 });

function shapesOf(paper: 'a4' | 'letter') {
  return drawn(paper).pages.map(({ marks, ...page }) => ({
    page,
    shapes: marks.filter((mark): mark is Shape => mark.kind === 'shape'),
    cut: marks.find((mark): mark is Line => mark.kind === 'line' && mark.name === 'cut')!,
  }));
}

/** Middle and radius of a mark's outer circle. */
function circleOf({ rings: [outer] }: Shape) {
  const xMm = outer.reduce((sum, place) => sum + place.xMm, 0) / outer.length;
  const yMm = outer.reduce((sum, place) => sum + place.yMm, 0) / outer.length;
  return { xMm, yMm, radii: outer.map((place) => Math.hypot(place.xMm - xMm, place.yMm - yMm)) };
}

describe('the sheets of reference marks', () => {
  it.each(['a4', 'letter'] as const)(
    '%s: marks of their true size, white round them, inside the margins',
    (paper) => {
      const pages = shapesOf(paper);
      expect(pages.map(({ shapes }) => shapes.length)).toEqual([2, 2, 1]);
      for (const { page, shapes, cut } of pages) {
        for (const shape of shapes) {
          const { xMm, yMm, radii } = circleOf(shape);
          for (const radius of radii) expect(radius).toBeCloseTo(wallMarkRadiusMm, 6);
          const white = 0.2 * wallMarkRadiusMm;
          const free = wallMarkRadiusMm + white;
          expect(xMm).toBeGreaterThan(free);
          expect(page.widthMm - xMm).toBeGreaterThan(free);
          expect(Math.abs(cut.y1Mm - yMm)).toBeGreaterThan(free);
        }
      }
    },
  );

  it('the screen’s drawing has holes where the paper’s has', () => {
    expect(pageSvg(drawn('a4').pages[0]).match(/<path [^>]*d="M[^"]*ZM[^"]*ZM[^"]*ZM[^"]*Z"/g)).toHaveLength(
      2,
    );
  });

  it('a count that cannot be printed is named', () => {
    expect(() => wallMarksSheet({ paper: 'a4', stamp: '', count: 3 })).toThrow('3 marks');
    expect(() => wallMarksSheet({ paper: 'a4', stamp: '', count: 25 })).toThrow('25 marks');
  });
});

const poppler = (() => {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

describe.skipIf(!poppler)('rendered by poppler', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-marks-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('every mark is found where it was drawn, to 0.1 mm, and no other', async () => {
    const file = join(folder, 'marks.pdf');
    writeFileSync(file, await bytesOf([drawn('letter')]));
    const dpi = 72;
    execFileSync('pdftoppm', ['-r', `${dpi}`, '-png', file, join(folder, 'page')]);
    for (const [i, { shapes }] of shapesOf('letter').entries()) {
      const read = decodeImage(readFileSync(join(folder, `page-${i + 1}.png`)));
      if (read.status !== 'converged') throw new Error(inWords(read.findings[0]));
      const found = findMarks(read.pixels);
      expect(found.map(({ number }) => `mark ${number}`)).toEqual(shapes.map(({ name }) => name));
      for (const [k, { centrePx, mirrored }] of found.entries()) {
        const { xMm, yMm } = circleOf(shapes[k]);
        // Pixel centres are at whole numbers: the page's corner is at −½.
        expect(Math.abs(((centrePx[0] + 0.5) * 25.4) / dpi - xMm)).toBeLessThan(0.1);
        expect(Math.abs(((centrePx[1] + 0.5) * 25.4) / dpi - yMm)).toBeLessThan(0.1);
        expect(mirrored).toBe(false);
      }
    }
  });
});
