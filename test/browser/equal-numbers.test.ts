import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SectionMarks } from '../../src/engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../../src/engine/units/tape-step.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addFile, goToStep } from './open-step.ts';
import { countOf, differing, readSteps, sharedOf } from './report-on-page.ts';

const root = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const examples = readdirSync(root('examples'))
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''));
const exampleText = (name: string) => readFileSync(root(`examples/${name}.json`), 'utf8');
interface Example {
  build: { guides?: Record<string, unknown>[] };
}
let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await bench.openPage('/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

/** In a long run every example, marks of its own and of the start's. */
const everyExample = process.env.EXAMPLES === 'all';

/** Rows in, guides placed for the blank, marks out: on the screen, and by the command line from the file saved there. */
test.each(everyExample ? ['nine-foot-four-piece', 'two-piece-spigot', 'two-hander'] : ['two-piece-spigot'])(
  '%s: the screen and the command line give the same marks',
  async (name) => {
    const id = await addFile(bench, exampleText(name));
    await page.goto(`${bench.server.address}/builds/${id}/layout`);
    const place = page.getByRole('button', { name: /^(Place the guides|Use the start)/, disabled: false });
    const placed = page.getByText('The guides stand as placed for this blank');
    await place.or(placed).waitFor();
    if (await place.isVisible()) await place.click();
    await page.getByText('every change is on the disk').waitFor();
    await goToStep(page, 'Marks');
    await page.getByRole('table').first().waitFor();
    const shown = await marksShown();
    const file = readFileSync(await saveAsFile(id), 'utf8');
    const { marks } = JSON.parse(await reportOf(file, '--json')) as {
      marks: { are: string; tapeStep: TapeStep; sections: SectionMarks[] };
    };
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
  },
);

/** A fly rod at the start's marks and at its own, a casting rod in a spiral. */
const compared = everyExample
  ? examples.flatMap((name) =>
      isMarked(name) ? [[name, 'own'] as const, [name, 'start'] as const] : [[name, 'start'] as const],
    )
  : ([
      ['two-piece-spigot', 'start'],
      ['demo-build', 'own'],
      ['demo-casting-spiral', 'own'],
    ] as const);

/** Own marks or the start's: what the report says of such a build, its page says too. */
test.each(compared)(
  '%s, marks of the %s: every number that report and page share is the same',
  { timeout: 600_000 },
  async (name, are) => {
    const text = exampleText(name);
    const id = await addFile(bench, are === 'own' ? text : withoutMarks(text));
    const own = await bench.openPage(`/builds/${id}/layout`, { viewport: { width: 1440, height: 900 } });
    const read = await readSteps(own, are);
    await own.close();
    const saved = await fetch(`${bench.server.address}/api/documents/${id}/file`);
    const report = await reportOf(await saved.text(), '--units', 'in');
    const lines = sharedOf(report, are);
    const differ = differing(lines, read);
    const counts = `${countOf(lines)} numbers in ${lines.length} lines of the report, ${differ.length} differ`;
    console.log(`    ${name}, ${are}: ${counts}`);
    expect(new Set(lines.map(({ report }) => report)).size).toBeGreaterThanOrEqual(20);
    expect(differ).toEqual([]);
  },
);

/** Beside the server, which goes on: it would find the kept connections of a process that stood still too old. */
async function reportOf(file: string, ...options: string[]): Promise<string> {
  const command = [root('scripts/fairbend.mjs'), 'report', '-', ...options];
  const running = promisify(execFile)(process.execPath, command, { maxBuffer: 2 ** 26 });
  running.child.stdin!.end(file);
  return (await running).stdout;
}

function isMarked(name: string): boolean {
  const { guides = [] } = (JSON.parse(exampleText(name)) as Example).build;
  return guides.length > 0 && guides.every(({ station }) => station !== undefined);
}

function withoutMarks(text: string): string {
  const file = JSON.parse(text) as Example;
  for (const guide of file.build.guides ?? []) {
    delete guide.station;
    delete guide.pinned;
  }
  return JSON.stringify(file);
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
