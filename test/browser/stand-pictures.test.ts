/** A blank measured by three painted pictures, from this computer's files; an invented blank, its truth known. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';
import {
  buildOfStand,
  findOrTapEnds,
  jpegOf,
  keepWall,
  paintedStand,
  solvedOf,
  stateOf,
  tapEnds,
  wallOfStand,
} from './stand-kit.ts';

const stand = paintedStand({ seed: 3, widthPx: 1600 });
const files = stand.pictures.map(({ picture }) => jpegOf(picture));
let bench: Bench;
let page: Page;
beforeAll(async () => {
  bench = await openBench();
  await keepWall(bench, wallOfStand(stand, 0.001));
  page = await openStep(bench, buildOfStand(stand), 'blank/readings');
  page.setDefaultTimeout(60_000);
});
afterAll(() => bench?.close());

const buildId = () => /builds\/([\w-]+)/.exec(page.url())?.[1] ?? '';
const send = (i: number, name = `p${i}.jpg`, buffer = files[i]) =>
  page.locator('.stand-card input[type=file]').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
const found = () =>
  page.getByText('Printed marks found: 1, 2, 3, 4, 5, 6, 7, 8. Their places are those of bench wall.');

async function readPicture(i: number) {
  await send(i);
  await found().first().waitFor();
  if (i === 0) await tapEnds(page, stand.pictures[i]);
  else expect(await findOrTapEnds(page, stand.pictures[i])).toBe('found');
  await page
    .getByText(/^Curve read/)
    .first()
    .waitFor();
}

describe('three photographs', () => {
  test('are laid out with what to hang; a picture of something else is answered in words and replaced', async () => {
    await page.getByRole('button', { name: 'Lay out the three photographs' }).click();
    await page.getByText('Picture 1. Hang nothing.').first().waitFor();
    await fill(page, 'Tip to the clamp', `${(1000 * stand.clampFromTipM).toFixed(1)} mm`);
    await send(0, 'notes.heic', Buffer.from('\0\0\0\x18ftypheic and no more', 'latin1'));
    await page
      .getByText(/notes\.heic was not added: it is a HEIC picture.*set the camera to JPEG/)
      .first()
      .waitFor();
    const { picture } = stand.pictures[0];
    const grey = { ...picture, rgb: new Uint8Array(picture.rgb.length).fill(120) };
    await send(0, 'cat.jpg', jpegOf(grey));
    await page.getByText('No printed marks were found: tap your own.').first().waitFor();
    await page.getByRole('button', { name: 'Take picture 1 again' }).click();
  });

  test('the first is read with two taps, the others without, on the wall’s own places; the stiffness follows', async () => {
    await readPicture(0);
    await page
      .getByText(/^Stiffness known to .*after one picture/)
      .first()
      .waitFor();
    for (const i of [1, 2]) {
      await page.getByRole('button', { name: 'Next picture' }).click();
      await page
        .getByText(new RegExp(`^Picture ${i + 1}\\. Hang .* at the tip`))
        .first()
        .waitFor();
      await fill(page, 'Weight that hung', `${1000 * stand.hungKg[i]} g`);
      await readPicture(i);
      await page
        .getByText(new RegExp(`^Stiffness known to ±\\d+ % .*after ${i + 1} pictures`))
        .first()
        .waitFor();
    }
    expect(await page.getByText('no real photograph has been part of this yet').count()).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
  });

  test('what the record holds is what the door takes, and it tells the blank', async () => {
    const state = await stateOf(bench, buildId());
    const { fit, answer, lnRms, held } = solvedOf(state, stand.blank);
    const curves = fit.request.setups.flatMap((setup) => (setup.kind === 'curve' ? [setup] : []));
    expect(curves).toHaveLength(3);
    expect(new Set(curves.map(({ shared }) => shared)).size).toBe(1);
    expect(curves.map(({ tests }) => tests[0].hung?.[0]?.massKg ?? 0)).toEqual([...stand.hungKg]);
    expect(answer.findings).toEqual([]);
    expect(lnRms).toBeLessThan(0.08);
    expect(held).toBeGreaterThan(0.8);
  });

  test('a wrong weight is said at a picture, and put right', async () => {
    await page.getByRole('button', { name: /^Picture 3/ }).click();
    await page.getByRole('button', { name: 'Take picture 3 again' }).click();
    await fill(page, 'Weight that hung', `${1400 * stand.hungKg[2]} g`);
    await page
      .getByText(/Picture \d bends as under/)
      .first()
      .waitFor();
    await fill(page, 'Weight that hung', `${1000 * stand.hungKg[2]} g`);
    await expect.poll(() => page.getByText(/Picture \d bends as under/).count()).toBe(0);
  });

  test('stays over a reload, at 390 px too, and is put away and brought back', async () => {
    await page.getByText('every change is on the disk').first().waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    await page.reload();
    await page
      .getByText(/^Stiffness known to ±\d+ % .*after 3 pictures/)
      .first()
      .waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await page.getByRole('button', { name: 'Put these pictures away' }).click();
    await expect.poll(() => page.locator('.stand-card').count()).toBe(0);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.locator('.stand-card').waitFor();
    expect(bench.complaints.filter((words) => !/422/.test(words))).toEqual([]);
  });
});
