/** The paired telephone measures a blank: pairing, the browser's camera fed with painted pictures, stiffness. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readStands } from '../../src/record/read-load-tests.ts';
import type { Picture } from '../render/develop.ts';
import { axeFindings } from './axe.ts';
import { chromeArguments, chromeFile } from './one-browser.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';
import {
  buildOfStand,
  findOrTapEnds,
  jpegOf,
  keepWall,
  paintedStand,
  solvedOf,
  standRows,
  stateOf,
  tapEnds,
  wallOfStand,
} from './stand-kit.ts';

const stand = paintedStand({ seed: 3, widthPx: 1600 });
const files = stand.pictures.map(({ picture }) => jpegOf(picture, 95));
const folder = mkdtempSync(join(tmpdir(), 'fairbend-camera-'));
const video = join(folder, 'scene.mjpeg');
let bench: Bench;
let browser: Browser;
let build: string;
let phone: Page;

beforeAll(async () => {
  bench = await openBench({ share: true, host: '127.0.0.1' });
  await keepWall(bench, wallOfStand(stand, 0.001));
  build = await addBuild(bench, [...buildOfStand(stand), ...standRows(stand)]);
  lookAt(files[0]);
  browser = await chromium.launch({
    executablePath: chromeFile(),
    args: [
      ...chromeArguments(),
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${video}`,
    ],
  });
  phone = await pairedPhone({ permissions: ['camera'] });
});
afterAll(async () => {
  await browser?.close();
  await bench?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What the camera sees when it is opened next. */
function lookAt(...frames: Buffer[]) {
  writeFileSync(video, Buffer.concat(frames.length > 1 ? frames : [frames[0], frames[0]]));
}

/** Twelve places, a fifth of a second at each, none shown twice within two seconds: no two looks fall on one place. */
function swinging({ width, height, rgb }: Picture): Buffer[] {
  return Array.from({ length: 12 }, (_, place) => {
    const [shifted, across] = [new Uint8Array(rgb.length), 3 * 12 * place];
    for (let row = 0; row < height; row++) {
      const line = rgb.subarray(3 * width * row, 3 * width * (row + 1));
      shifted.set(line.subarray(across), 3 * width * row);
      shifted.set(line.subarray(0, across), 3 * width * (row + 1) - across);
    }
    return jpegOf({ width, height, rgb: shifted }, 80);
  }).flatMap((frame) => Array(6).fill(frame) as Buffer[]);
}

/** Another device, as far as the server can tell: what a proxy passes on is not of this computer. */
async function pairedPhone(options: BrowserContextOptions): Promise<Page> {
  const { address } = bench.server;
  const headers = { 'content-type': 'application/json' };
  const made = await fetch(`${address}/api/sharing/code`, { method: 'POST', headers, body: '{}' });
  const { code } = (await made.json()) as { code: string };
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    extraHTTPHeaders: { 'x-forwarded-for': '192.0.2.7' },
    ...options,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(`${address}/pair#${code}/stand/${build}/st`);
  await page.getByRole('button', { name: 'Pair', exact: true }).click();
  await page.getByRole('heading', { name: 'Pictures of the blank' }).waitFor();
  return page;
}

async function shoot(i: number) {
  await phone.getByRole('button', { name: `Take picture ${i + 1}`, exact: true }).click();
  await phone.getByRole('button', { name: `Take picture ${i + 1} in 5 s` }).click();
}

async function readIt(i: number) {
  await phone
    .getByText(/^Printed marks found: 1, 2, 3, 4, 5, 6, 7, 8\./)
    .first()
    .waitFor();
  if (i === 0) await tapEnds(phone, stand.pictures[i]);
  else expect(await findOrTapEnds(phone, stand.pictures[i])).toBe('found');
  await phone
    .getByText(/^Curve read/)
    .first()
    .waitFor();
}

describe('the paired telephone', () => {
  test('shows what to hang and one button; half a frame that is black is not sent', async () => {
    await phone.getByText('Picture 1. Hang nothing.').first().waitFor();
    expect(await axeFindings(phone)).toEqual([]);
    const { picture } = stand.pictures[0];
    const rgb = picture.rgb.map((level, at) => (at < picture.rgb.length / 2 ? 0 : level));
    lookAt(jpegOf({ ...picture, rgb }));
    await shoot(0);
    await phone
      .getByText(/A large part of the picture is black/)
      .first()
      .waitFor();
    await phone.getByRole('button', { name: 'Close the camera' }).click();
    expect(await photosKept()).toBe(0);
  });

  test('waits while the weight still swings', async () => {
    lookAt(...swinging(stand.pictures[1].picture));
    await shoot(0);
    await phone.getByText('Something still moves: waiting until the weight hangs still.').first().waitFor();
    await phone.getByRole('button', { name: 'Stop' }).click();
    await phone.getByRole('button', { name: 'Close the camera' }).click();
    expect(await photosKept()).toBe(0);
  });

  test('counts down, takes each picture, lays its curve over it, and the stiffness follows', async () => {
    lookAt(files[0]);
    await shoot(0);
    await readIt(0);
    await phone
      .getByText(/^Stiffness known to .*after one picture/)
      .first()
      .waitFor();
    await phone.getByRole('button', { name: 'Next picture' }).click();
    await phone.getByRole('textbox', { name: 'Weight that hung' }).fill(`${1000 * stand.hungKg[1]} g`);
    lookAt(files[1]);
    await shoot(1);
    await readIt(1);
    await phone
      .getByText(/^Stiffness known to ±\d+ % .*after 2 pictures/)
      .first()
      .waitFor();
  });

  test('keeps a picture while the network is gone, and sends it by itself', async () => {
    await phone.getByRole('button', { name: 'Next picture' }).click();
    await phone.getByRole('textbox', { name: 'Weight that hung' }).fill(`${1000 * stand.hungKg[2]} g`);
    lookAt(files[2]);
    await phone.getByRole('button', { name: 'Take picture 3', exact: true }).click();
    await phone.context().setOffline(true);
    await phone.getByRole('button', { name: 'Take picture 3 in 5 s' }).click();
    await phone
      .getByText(/cannot be reached\. The picture is kept on this device/)
      .first()
      .waitFor();
    expect(await photosKept()).toBe(2);
    await phone.context().setOffline(false);
    await readIt(2);
    await phone
      .getByText(/^Stiffness known to ±\d+ % .*after 3 pictures/)
      .first()
      .waitFor();
    const { answer, lnRms, held } = solvedOf(await stateOf(bench, build), stand.blank);
    expect(answer.findings).toEqual([]);
    expect(lnRms).toBeLessThan(0.08);
    expect(held).toBeGreaterThan(0.8);
  });

  test('that refuses its camera is told so, and chooses a file', async () => {
    const shy = await pairedPhone({});
    await shy
      .getByRole('button', { name: /^Picture 1/ })
      .first()
      .click();
    await shy.getByRole('button', { name: 'Take picture 1 again' }).click();
    await shy.getByRole('button', { name: 'Take picture 1', exact: true }).click();
    await shy
      .getByText(/The camera was refused\. Allow it for this page/)
      .first()
      .waitFor();
    await shy
      .getByLabel('Choose one that was taken')
      .setInputFiles({ name: 'chosen.jpg', mimeType: 'image/jpeg', buffer: files[0] });
    await shy.getByRole('region', { name: 'Picture chosen.jpg' }).waitFor();
    expect(await shy.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    await shy.context().close();
  });
});

async function photosKept(): Promise<number> {
  const [{ tests }] = readStands(await stateOf(bench, build));
  return tests.flatMap(({ photos }) => photos).length;
}
