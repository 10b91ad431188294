import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SectionMarks } from '../../src/engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../../src/engine/units/tape-step.ts';
import { plusMinusOnTape } from '../../src/sheets/marks-sheet.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addFile, goToStep } from './open-step.ts';

const root = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

/** Rows in, guides placed for the blank, marks out: on the screen, and by the command line from the file saved there. */
test.each(['nine-foot-four-piece', 'two-piece-spigot', 'two-hander', 'demo-build'])(
  '%s: the screen and the command line give the same marks',
  async (name) => {
    const id = await addFile(bench, readFileSync(root(`examples/${name}.json`), 'utf8'));
    await page.goto(`${bench.server.address}/builds/${id}/layout`);
    const place = page.getByRole('button', { name: /^Place the guides/, disabled: false });
    const placed = page.getByText('The guides stand as placed for this blank');
    await place.or(placed).waitFor();
    if (await place.isVisible()) await place.click();
    await page.getByText('every change is on the disk').waitFor();
    await goToStep(page, 'Marks');
    await page.getByRole('table').first().waitFor();
    const shown = await marksShown();
    const doubts = name === 'demo-build' ? await doubtsShown() : undefined;
    const file = await saveAsFile(id);
    const { marks } = JSON.parse(
      execFileSync(process.execPath, [root('scripts/fairbend.mjs'), 'report', file, '--json'], {
        encoding: 'utf8',
      }),
    ) as { marks: { are: string; tapeStep: TapeStep; sections: SectionMarks[] } };
    expect(marks.are).toBe('own');
    const plain = (lengthM: number) =>
      formatOnTape(lengthM, marks.tapeStep)
        .replace('⁄', '/')
        .replace(/ (in|mm)$/, '');
    const told = marks.sections.flatMap(({ rows }) =>
      rows.map((row) => [`${row.guide}`, plain(row.fromOwnTipM), plain(row.fromOwnButtM)]),
    );
    expect(told.length).toBeGreaterThan(5);
    expect(shown).toEqual(told);
    if (doubts) expectSameDoubts(doubts, marks.sections);
  },
);

/** The ± of every mark, under the figures of the Layout step. */
async function doubtsShown(): Promise<string[]> {
  await goToStep(page, 'Layout');
  await page.getByText(/placed anew on \d+ blanks/).waitFor({ timeout: 120_000 });
  const table = await page.locator('.place-doubts [data-doubt]').allTextContents();
  return table.map(spoken);
}

/** As a screen reader has it: `±1 5/8`. */
const spoken = (text: string) =>
  text
    .replace(/\s(\d+\/\d+)\d+⁄\d+/g, ' $1')
    .replace('± ', '±')
    .trim();

/** Every mark that was found has its ±, the report's own number. */
function expectSameDoubts(shown: readonly string[], sections: SectionMarks[]) {
  const told = sections
    .flatMap(({ rows }) => rows)
    .map(({ plusMinusM }) => (plusMinusM === undefined ? '' : plusMinusOnTape(plusMinusM, '1/8 in')))
    .map((words) => words.replace('⁄', '/').replace(' in', ''));
  expect(told.filter((words) => words !== '').length).toBeGreaterThan(7);
  // the first guide and the stripping guide stand where the builder put them
  expect([told[0], told.at(-1)]).toEqual(['', '']);
  expect(shown).toEqual(told);
}

/** Guide, from its own section's tip end, from its butt end; as a screen reader has them. */
async function marksShown(): Promise<string[][]> {
  const rows = await page.locator('.marks-table tbody tr:has(th)').all();
  return Promise.all(
    rows.map(async (row) => {
      const cells = await row
        .locator('th .mark-main, td:nth-of-type(-n+2) > span:first-child')
        .allTextContents();
      return cells.map((cell) => cell.replace(/\u00a0(\d+)\/(\d+)\1⁄\2/, ' $1/$2').trim());
    }),
  );
}

async function saveAsFile(id: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Shelf' }).first().click();
  await page.locator(`a[href$="/api/documents/${id}/file"]`).click();
  return (await download).path();
}
