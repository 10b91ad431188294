import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jpeg from 'jpeg-js';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentAnswer } from '../../src/record/api.ts';
import type { Change } from '../../src/record/operation.ts';
import type { FieldValue } from '../../src/record/schema.ts';
import { liveScene } from '../support/live-scene.ts';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { chromeArguments, chromeFile } from './one-browser.ts';
import { type Bench, openBench } from './open-bench.ts';
import { addBuild } from './open-step.ts';

/** A painted blank under a weight, before a wall with printed marks: what Chromium's fake camera sees. */
const scene = liveScene(33, 1600);
const index = 1;
const axis = scene.bent[index].axis;
const folder = mkdtempSync(join(tmpdir(), 'fairbend-live-'));
let bench: Bench;
let browser: Browser;
let page: Page;
let build: string;

beforeAll(async () => {
  bench = await openBench();
  const file = join(folder, 'camera.mjpeg');
  writeFileSync(file, cameraFile());
  browser = await chromium.launch({
    executablePath: chromeFile(),
    args: [
      ...chromeArguments(),
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${file}`,
    ],
  });
  build = await addBuild(bench, [...twoPieceChanges(), ...lengths(), ...wallRows()]);
  page = await openLive(
    await browser.newContext({ serviceWorkers: 'block', viewport: { width: 390, height: 844 } }),
  );
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await bench?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function openLive(context: { newPage(): Promise<Page> }): Promise<Page> {
  const opened = await context.newPage();
  opened.setDefaultTimeout(60_000);
  await opened.goto(`${bench.server.address}/live/${build}/t`);
  return opened;
}

function cameraFile(): Buffer {
  const { width, height, data: rgb } = scene.frame(index);
  const data = new Uint8Array(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return jpeg.encode({ width, height, data }, 92).data;
}

/** The build's rod as long in front of its grip as the painted one: grip 9 1/4 in, overlap 2 in. */
function lengths(): Change[] {
  const si = (scene.blank.lengthM + 11.25 * 0.0254) / 2;
  return ['top', 'low'].flatMap((id) => row('sections', id, { length: { si, text: `${si} m` } }));
}

/** An earlier picture whose printed marks have their places. */
function wallRows(): Change[] {
  const metres = (si: number) => ({ si, text: `${(1000 * si).toFixed(1)} mm` });
  return [
    ...row('loadTests', 't', { order: 0, madeAt: '2026-03-01T09:00:00Z', rod: 'taped' }),
    ...row('loadPhotos', 'p', { order: 0, test: 't', part: 'whole', marksBy: 'printed' }),
    ...scene.known.wall.flatMap(({ number, atM: [x, y] }) =>
      row('photoPlaces', `m${number}`, {
        photo: 'p',
        order: number,
        role: 'mark',
        number,
        pxX: 10 * number,
        pxY: 10,
        found: 'found',
        atX: metres(x),
        atY: metres(y),
      }),
    ),
  ];
}

function row(collection: string, id: string, fields: Record<string, FieldValue>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
}

async function cells(): Promise<string> {
  const answer = await fetch(`${bench.server.address}/api/documents/${build}`);
  return JSON.stringify(((await answer.json()) as DocumentAnswer).cells);
}

/** Picture pixels of the path drawn over it. */
async function drawn(name: string): Promise<[number, number][]> {
  const d = (await page.locator(name).getAttribute('d')) ?? '';
  return d
    .slice(1)
    .split('L')
    .map((place) => place.split(' ').map(Number) as [number, number]);
}

async function tap(px: { x: number; y: number }): Promise<void> {
  const box = await page.locator('.live-stage svg').boundingBox();
  if (!box) throw new Error('no picture');
  const scale = box.width / 1600;
  await page.mouse.click(box.x + px.x * scale, box.y + px.y * scale);
}

describe('the live view', () => {
  test('asks for butt and tip where nothing tells the clamp; then the curve lies on the blank', async () => {
    await page.getByText('Tap where the blank leaves the clamp or grip.').waitFor();
    await tap(scene.camera.project(axis[0]));
    await page.getByText('Now tap the tip.').waitFor();
    await tap(scene.camera.project(axis[axis.length - 1]));
    await page.locator('.live-curve').waitFor();
    const truth = axis.map(scene.camera.project);
    const off = (await drawn('.live-curve')).map(([x, y]) =>
      Math.min(...truth.map((at) => Math.hypot(at.x - x, at.y - y))),
    );
    expect(Math.max(...off)).toBeLessThan(4);
    await page.getByText(/^\d marks · \d+\.\d s a picture$/).waitFor();
  });

  test('shows the worst line angle and gap beside their limits', async () => {
    await expect
      .poll(() => page.locator('.live-worst').textContent())
      .toMatch(/\d°[\s\S]*guide \d[\s\S]*limit \d+°.*[\s\S]*gap .*limit/);
    expect(await page.locator('.live-rings circle').count()).toBe(7);
  });

  test('predicts the next weight on one press, draws it, and records only that', async () => {
    const before = await cells();
    expect(before).not.toContain('proofPlaces');
    await page.getByRole('button', { name: /^Predict \d+ g$/ }).click();
    await page.locator('.live-dashed').waitFor();
    await page.getByText(/The rod should come to rest on the dashed line/).waitFor();
    const [hold] = await drawn('.live-dashed');
    const butt = scene.camera.project(axis[0]);
    expect(Math.hypot(hold[0] - butt.x, hold[1] - butt.y)).toBeLessThan(60);
    await expect.poll(cells).toContain('proofPlaces');
    expect(await cells()).not.toContain('live.jpg');
  });

  test('axe finds nothing, and nothing scrolls sideways', async () => {
    expect(await axeFindings(page)).toEqual([]);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
  });

  test('keeps a picture only when asked, and the proof’s score with it', async () => {
    await page.getByRole('button', { name: 'Keep this picture' }).click();
    await page.getByText('One picture is in the load test.').waitFor();
    const after = await cells();
    expect(after).toContain('live.jpg');
    expect(after).toContain('seenUp');
  });

  test('lets the camera go when the page is left', async () => {
    const stream = await page.evaluateHandle(() => document.querySelector('video')?.srcObject as MediaStream);
    expect(await stream.evaluate((one) => one.getTracks().map((track) => track.readyState))).toEqual([
      'live',
    ]);
    await page.getByRole('link', { name: 'Back to the load test' }).click();
    await page.locator('.test-card').first().waitFor();
    expect(await stream.evaluate((one) => one.getTracks().map((track) => track.readyState))).toEqual([
      'ended',
    ]);
  });
});

test('a camera that is refused is said, with what to do', async () => {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  await context.addInitScript(() => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
  });
  const refused = await openLive(context);
  await refused.getByText(/^The camera was refused\. Allow it/).waitFor();
  await refused.getByRole('button', { name: 'Try again' }).waitFor();
  await context.close();
});
