import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Effort, type Measured, Newcomer } from './newcomer.ts';
import { type Bench, openBench } from './open-bench.ts';

/** Invented blanks. */
const inchTwoPiece: Measured = {
  sections: 2,
  lengths: ['49 in', `4' 1"`],
  masses: ['10.5 g', '24 g'],
  overlaps: ['2 in'],
  diameters: ['1.7 mm', '3.4 mm', '5.1 mm', '5 mm', '6.9 mm', '8.7 mm'],
  drops: ['2 1/4 in', '28 in', '21 1/2 in', '14 1/2 in', '5 1/4 in'],
  clamp: ['1/8 in'],
  gripFront: '10 in',
  reel: '2 1/2 in',
};
const metricFourPiece: Measured = {
  sections: 4,
  lengths: ['710', '705', '705', '700'],
  masses: ['4.1 g', '8.9 g', '14 g', '20 g'],
  overlaps: ['40', '45', '50'],
  diameters: ['1.6', '2.5', '3.4', '3.6', '4.4', '5.2', '5.4', '6.2', '7', '7.2', '8.2', '9.2'],
  drops: ['45', '760', '536', '300', '62'],
  clamp: ['4'],
  gripFront: '250',
};

/** Each way of measuring once on a screen and once on a telephone; in a long run both on both. */
const everyWalk = [
  ['two-piece in inches', 1440, 900, 'en-US', inchTwoPiece, 'inch'],
  ['two-piece in inches', 390, 844, 'en-US', inchTwoPiece, 'inch'],
  ['four-piece in mm', 1440, 900, 'de-DE', metricFourPiece, 'mm'],
  ['four-piece in mm', 390, 844, 'de-DE', metricFourPiece, 'mm'],
] as const;
const walks = process.env.WALKS === 'all' ? everyWalk : [everyWalk[1], everyWalk[2]];

const docs = readFileSync(new URL('../../docs/first-hour.md', import.meta.url), 'utf8');
let own: Bench;
// every walk begins with a record in which nobody did anything yet
beforeEach(async () => {
  own = await openBench();
});
afterEach(() => own?.close());

test.each(walks)(
  'the first hour: %s, %d × %d, browser in %s',
  async (rod, width, height, locale, measured, unit) => {
    const page = await own.openPage('/', {
      folded: true,
      viewport: { width, height },
      locale,
      acceptDownloads: true,
      hasTouch: width < 500,
    });
    page.setDefaultTimeout(30_000);
    const newcomer = new Newcomer(page, measured);
    const download = page.waitForEvent('download', { timeout: 110_000 });
    await Promise.all([newcomer.walk(), download]);
    expect(
      readFileSync(await (await download).path())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    const { effort } = newcomer;
    console.info(rowOf(rod, width, effort), effort.scrolls, effort.pressed.join(' · '), effort.words);
    expect(effort.clicks).toBeLessThanOrEqual(10);
    expect(effort.fields).toBeLessThanOrEqual(30);
    expect(newcomer.notAsked).toEqual([]);
    await page.getByText(unit === 'mm' ? 'millimetres' : 'inches', { exact: true }).waitFor();
    expect(docs).toContain(rowOf(rod, width, effort));
    expect(own.complaints).toEqual([]);
  },
);

/** As the page in the docs has it; how far a wheel turns hangs on the fonts of this computer. */
function rowOf(rod: string, width: number, { clicks, fields }: Effort): string {
  return `| ${rod} | ${width} | ${clicks} | ${fields} | `;
}
