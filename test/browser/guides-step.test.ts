import { decode, encode } from 'fast-png';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bagSheet } from '../../src/engine/wall-mark/bag-marks.ts';
import { type GuideTruth, paintScan, type ScanSheet } from '../render/scan-sheet.ts';
import { photographSheet } from '../render/sheet-photo.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { cutTables, fill, openStep } from './open-step.ts';

let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  page = await openStep(bench, twoPieceChanges(), 'guides');
  await page.getByRole('heading', { name: 'The set' }).waitFor({ timeout: 40_000 });
});
afterAll(() => bench?.close());

test('a knot too thick for a ring is named with the guide', async () => {
  await fill(page, 'Thickest knot that must pass', '3.3 mm');
  await page
    .getByText(/Take a larger guide 1 or a slimmer knot/)
    .first()
    .waitFor();
  await fill(page, 'Thickest knot that must pass', '2 mm');
  await page
    .getByText(/Take a larger guide 1/)
    .first()
    .waitFor({ state: 'detached' });
});

test('a guide measured once in the shop is chosen for its place, and its numbers say where they come from', async () => {
  await page.getByRole('button', { name: 'Add a guide to the shop' }).click();
  await page.locator('.rack-row summary').first().click();
  await fill(page, 'Size', '1');
  await fill(page, 'Height of the ring’s middle', '2.5 mm');
  await fill(page, 'On hand', '1');
  for (const place of ['1', '2']) {
    await page.getByLabel(`Shop’s guide for guide ${place}`).selectOption({ label: 'snake 1' });
  }
  const first = page.getByRole('row', { name: /^1 snake 1/ });
  await first.getByText('measured, from the shop’s guides').waitFor();
  expect(await first.getByLabel('Opening of guide 1').getAttribute('placeholder')).toBe('0.161 in');
  await page.getByText(/snake 1: 2 on this build, 1 in the drawer/).waitFor();
  await fill(page, 'Height of the ring’s middle', '2.7 mm');
  await first.getByText(/differs in height of the ring’s middle/).waitFor();
  await first.getByRole('button', { name: 'Take it again for guide 1' }).click();
  await first.getByText(/differs in/).waitFor({ state: 'detached' });
});

test('the straight guide goes to the tip though it was looked at second; what is missing is ordered', async () => {
  const bag = page.getByRole('region', { name: 'Guides in the bag' });
  const size = (await bag.getByRole('rowheader').first().textContent()) ?? '';
  const plus = (name: string) => page.getByRole('button', { name: `+ ${name}, size ${size}`, exact: true });
  await plus('slightly out').click();
  await plus('straight').click();
  const tipPlace = page.getByRole('region', { name: 'Rack' }).getByRole('row').nth(1);
  await tipPlace.getByRole('cell', { name: '2', exact: true }).waitFor();
  await page.getByText(/Too few usable guides\. Order/).waitFor();
});

test('how straight is straight enough is the builder’s: his figure, then the shop’s, then common practice', async () => {
  const field = page.getByRole('textbox', { name: 'Tolerance, of the blank’s diameter' });
  const under = page.locator('.field', { has: field }).locator('.field-line');
  expect(await field.getAttribute('placeholder')).toBe('6');
  expect(await under.textContent()).toBe('our choice');
  await page.getByText('typical, 0.008 to 0.012 in').waitFor();
  const tipPlace = page.getByRole('region', { name: 'Rack' }).getByRole('row').nth(1);
  await fill(page, 'Tolerance, of the blank’s diameter', '1');
  await tipPlace.getByText('order one').waitFor();
  await page.getByRole('button', { name: 'Use as the shop’s default' }).click();
  await fill(page, 'Tolerance, of the blank’s diameter', '');
  await page.getByText('your shop’s', { exact: true }).waitFor();
  expect(await field.getAttribute('placeholder')).toBe('1 %');
  await tipPlace.getByText('order one').waitFor();
  await fill(page, 'Tolerance, of the blank’s diameter', '6');
  await tipPlace.getByRole('cell', { name: '2', exact: true }).waitFor();
});

test('a cracked one goes back with its reason', async () => {
  await page
    .getByRole('button', { name: /^\+ put aside/ })
    .first()
    .click();
  await page.getByText(/^3 \(.*cracked plating/).waitFor();
});

test('a scan is read, its resolution questioned, and the measured feet decide', async () => {
  const sheet = paintScan({ seed: 3, guides: 1, widthMm: 60, heightMm: 45 });
  const { width, height, rgb: data } = sheet.picture;
  const scan = {
    name: 'bag.png',
    mimeType: 'image/png',
    buffer: Buffer.from(
      encode({ width, height, channels: 3, depth: 8, data, text: { Comment: 'taken at home' } }),
    ),
  };
  await page.locator('input[type=file]').first().setInputFiles(scan, { timeout: 60_000 });
  const found = page.getByRole('region', { name: 'Guides on the scan' });
  await found.waitFor({ timeout: 90_000 });
  expect(await found.getByRole('row').count()).toBe(2);
  const take = page.getByRole('button', { name: 'Put them into the bag' });
  expect(await take.isDisabled()).toBe(true);
  const lengthMm = 1000 * sheet.guides[0].lengthM;
  await page.getByLabel('Its length over both feet').fill(`${(lengthMm * 2).toFixed(1)} mm`);
  await page.getByText(/By your guide this scan has 300 dpi, not 600/).waitFor();
  await page.getByLabel('Its length over both feet').fill(`${lengthMm.toFixed(1)} mm`);
  await page.getByText('Read at 600 dpi, as your guide confirms.').waitFor();
  await take.click();
  const row = page
    .getByRole('region', { name: 'Each guide looked at' })
    .getByRole('row', { name: /in, [\d.]+°/ });
  const seen = /([\d.]+) in, ([\d.]+)°/.exec((await row.getByRole('cell').first().textContent()) ?? '');
  expect(Math.abs(25.4 * Number(seen?.[1]) - 1000 * Math.abs(sheet.guides[0].offsetM))).toBeLessThan(0.12);
  expect(Math.abs(Number(seen?.[2]) - (180 / Math.PI) * Math.abs(sheet.guides[0].angleRad))).toBeLessThan(
    1.2,
  );
});

test('the scan is kept with the build, nothing but its pixels, and can be discarded', async () => {
  const kept = page.getByRole('list', { name: 'Scans kept with this build' });
  await kept.getByText(/bag\.png, read with 600 dpi: number \d+ of the bag/).waitFor();
  const picture = await pictureOf(await kept.getByRole('link').getAttribute('href'));
  const { width, height, rgb } = paintScan({ seed: 3, guides: 1, widthMm: 60, heightMm: 45 }).picture;
  expect([picture.width, picture.height]).toEqual([width, height]);
  expect(Buffer.compare(Buffer.from(picture.data), Buffer.from(rgb))).toBe(0);
  expect(picture.text).toEqual({});
  await kept.getByRole('button', { name: /^Discard the picture/ }).click();
  await kept.waitFor({ state: 'detached' });
  await page
    .getByRole('region', { name: 'Each guide looked at' })
    .getByText(/in, [\d.]+°/)
    .waitFor();
});

test('a telephone’s picture of the printed sheet gives the feet’s numbers in the table', async () => {
  const sheet = paintScan({ seed: 11, guides: 3, dpi: 400, widthMm: 124, heightMm: 88, darkGround: false });
  const { width, height, data } = photographSheet(sheet, { tiltRad: 0.15, turnRad: 0.1 });
  const photo = {
    name: 'phone.png',
    mimeType: 'image/png',
    buffer: Buffer.from(encode({ width, height, channels: 3, depth: 8, data: data as Uint8Array })),
  };
  await page.locator('input[type=file]').nth(1).setInputFiles(photo, { timeout: 60_000 });
  const found = page.getByRole('region', { name: 'Guides on the scan' });
  await found.waitFor({ timeout: 120_000 });
  await page.getByText(/as the sheet’s four marks say/).waitFor();
  const cells = await found
    .getByRole('row')
    .evaluateAll((rows) =>
      rows
        .slice(1)
        .map((row) =>
          [...row.querySelectorAll('td')].map((cell) => Number.parseFloat(cell.textContent ?? '')),
        ),
    );
  const seen = cells.map(([lengthIn, offsetIn, angleDeg]) => ({
    lengthMm: 25.4 * lengthIn,
    offsetMm: 25.4 * offsetIn,
    angleDeg,
  }));
  const wholly = sheet.guides.filter((guide) => liesWithin(sheet, guide));
  expect(wholly.length).toBeGreaterThanOrEqual(2);
  for (const guide of wholly) {
    const near = seen.filter(
      ({ lengthMm, offsetMm, angleDeg }) =>
        Math.abs(lengthMm / (1000 * guide.lengthM) - 1) < 0.03 &&
        Math.abs(offsetMm - 1000 * Math.abs(guide.offsetM)) < 0.2 &&
        Math.abs(angleDeg - (180 / Math.PI) * Math.abs(guide.angleRad)) < 2,
    );
    expect(near, `guide of ${(1000 * guide.lengthM).toFixed(1)} mm in ${JSON.stringify(seen)}`).toHaveLength(
      1,
    );
  }
  await page.getByRole('button', { name: 'Put them into the bag' }).click();
  await page
    .getByRole('list', { name: 'Scans kept with this build' })
    .getByText(/phone\.png, read with 400 dpi: numbers/)
    .waitFor();
});

test('a file that is no picture is refused with the reason', async () => {
  const file = { name: 'list.png', mimeType: 'image/png', buffer: Buffer.from('no picture at all') };
  await page.locator('input[type=file]').first().setInputFiles(file, { timeout: 60_000 });
  await page.getByText(/list\.png: .*no picture known here/).waitFor();
});

test('each guide is looked at one by one', async () => {
  const looks = page.getByRole('region', { name: 'Each guide looked at' });
  const row = looks.getByRole('row').nth(1);
  await row.getByRole('button', { name: /All well/ }).click();
  expect(await row.locator('.flag[data-selected]').count()).toBe(6);
  await row.getByLabel(/aside$/).selectOption('rough ring');
  await page.getByText(/^1 \(.*\): Rejected by you: rough ring\.$/).waitFor();
});

test('axe finds nothing on the guides, and no table of theirs is scrolled sideways', async () => {
  await expectWell(
    page,
    [
      [390, 'light'],
      [1440, 'light'],
      [820, 'dark'],
    ],
    async () => {
      expect(await cutTables(page)).toEqual([]);
    },
  );
  expect(bench.complaints).toEqual([]);
});

async function pictureOf(address: string | null) {
  const answer = await fetch(new URL(address ?? '', bench.server.address));
  return decode(new Uint8Array(await answer.arrayBuffer()));
}

/** Whether the sheet's own frame holds the whole guide: the painted scan is larger. */
function liesWithin({ picture, dpi }: ScanSheet, { centrePx: [x, y], lengthM }: GuideTruth): boolean {
  const half = lengthM / 2 + 0.002;
  const fromMiddleM = (px: number, sizePx: number) => Math.abs(((px - sizePx / 2) / dpi) * 0.0254);
  return (
    fromMiddleM(x, picture.width) + half < bagSheet.halfWidthM &&
    fromMiddleM(y, picture.height) + half < bagSheet.halfHeightM
  );
}
