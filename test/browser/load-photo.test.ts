import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DocumentAnswer } from '../../src/record/api.ts';
import { applyOperations, emptyDocument } from '../../src/record/document.ts';
import type { Change, DocumentState } from '../../src/record/operation.ts';
import { readLoadTests } from '../../src/record/read-load-tests.ts';
import { axeFindings } from './axe.ts';
import { twoPieceChanges } from './invented-build.ts';
import { expectWell } from './looks.ts';
import { type Bench, openBench } from './open-bench.ts';
import { fill, openStep } from './open-step.ts';
import { paintedFile, tapPixel, tellTale } from './photo-kit.ts';

const { photo, file } = paintedFile({ seed: 5, widthPx: 1600, heightPx: 1200, marks: 6, clutter: 0.5 });
let bench: Bench;
let page: Page;
beforeAll(async () => {
  // As with --share, but on this computer's own address.
  bench = await openBench({ share: true, host: '127.0.0.1' });
  page = await openStep(bench, [...twoPieceChanges(), ...paintedLengths()], 'load-test');
  page.setDefaultTimeout(30_000);
});
afterAll(() => bench?.close());

/** The build's rod as long in front of its grip as the painted one: grip 9 1/4 in, overlap 2 in. */
function paintedLengths(): Change[] {
  const freeM = photo.axis
    .slice(1)
    .reduce((sum, at, i) => sum + Math.hypot(at.x - photo.axis[i].x, at.y - photo.axis[i].y), 0);
  const si = (freeM + 11.25 * 0.0254) / 2;
  return ['top', 'low'].map((id) => ({ path: ['sections', id, 'length'], value: { si, text: `${si} m` } }));
}

const picture = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer });
const buildId = () => /builds\/([\w-]+)/.exec(page.url())?.[1] ?? '';
const saved = () => page.getByText('every change is on the disk').waitFor();

/** The load tests as the server keeps them. */
async function kept() {
  await saved();
  const answer = await fetch(`${bench.server.address}/api/documents/${buildId()}`);
  const { cells, clock, lastSeq } = (await answer.json()) as DocumentAnswer;
  const state: DocumentState = {
    ...applyOperations(emptyDocument('b', 'build'), []),
    cells: new Map(cells),
    clock,
    lastSeq,
  } as DocumentState;
  return readLoadTests(state);
}

async function typePlaces() {
  const [first, ...rest] = photo.marks;
  for (const [i, { atM }] of rest.entries()) {
    for (const [axis, name] of ['to the right', 'up'].entries()) {
      await fill(page, `mark ${i + 2} ${name}`, `${((atM[axis] - first.atM[axis]) * 1000).toFixed(1)} mm`);
    }
  }
}

describe('a picture from this computer', () => {
  test('that is broken or none is refused with the reason, and nothing is kept', async () => {
    await page.getByRole('button', { name: 'New load test' }).click();
    const input = page.locator('.photo-drop input[type=file]');
    await input.setInputFiles(picture('half.jpg', file.subarray(0, file.length >> 1)));
    await page.getByText(/half\.jpg was not added: .*The JPEG file is broken or cut short/).waitFor();
    await input.setInputFiles({
      name: 'notes.heic',
      mimeType: 'image/heic',
      buffer: Buffer.from('no picture'),
    });
    await page.getByText(/notes\.heic was not added: .*no picture/).waitFor();
    expect((await kept())[0].photos).toEqual([]);
  });

  test('is kept without its place and camera, and shown', async () => {
    expect(file.toString('latin1')).toContain(tellTale);
    await page.locator('.photo-drop input[type=file]').setInputFiles(picture('bend.jpg', file));
    await page.locator('.photo-stage img').waitFor();
    const [{ photos }] = await kept();
    const stored = await fetch(`${bench.server.address}/api/attachments/${photos[0].hash}`);
    const bytes = Buffer.from(await stored.arrayBuffer()).toString('latin1');
    expect(bytes).not.toContain('Invented Camera');
    expect(bytes).not.toContain('Exif');
    expect([photos[0].widthPx, photos[0].heightPx]).toEqual([1600, 1200]);
    await page.getByText('No printed marks were found: tap your own.').waitFor();
  });

  test('tapped, its curve is read, lies on the blank, and is kept', async () => {
    await page.getByText('other points', { exact: true }).click();
    for (const { px } of photo.marks) await tapPixel(page, px);
    await page.getByText('Butt', { exact: true }).click();
    await tapPixel(page, photo.ends.butt);
    await page.getByText('Tip', { exact: true }).click();
    await tapPixel(page, photo.ends.tip);
    await typePlaces();
    await page.getByRole('button', { name: 'Read the curve' }).click();
    await page.getByText(/^Curve read/).waitFor();
    const trace = (await kept())[0].photos[0].trace;
    expect(trace?.outOfDate).toBe(false);
    const [{ atM }] = photo.marks;
    const off = (trace?.points ?? []).map(({ xM, yM }) =>
      Math.min(...photo.axis.map(({ x, y }) => Math.hypot(x - atM[0] - xM, y - atM[1] - yM))),
    );
    const rmsM = Math.sqrt(off.reduce((sum, value) => sum + value * value, 0) / off.length);
    // A mouse taps whole screen pixels: some 2 mm of this wall each.
    expect(rmsM).toBeLessThan(0.006);
  });

  test('its curve is pulled to where the blank is, by keys a handle is nudged; undo takes place and curve back', async () => {
    const middle = (await kept())[0].photos[0].trace?.points.at(200)?.px ?? [0, 0];
    const image = page.locator('.photo-stage img');
    await page.locator('.photo-stage').scrollIntoViewIfNeeded();
    const box = await image.boundingBox();
    if (!box) throw new Error('no picture');
    const [x, y] = middle.map((at, axis) => [box.x, box.y][axis] + (at * box.width) / 1600);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 8, y + 8, { steps: 3 });
    await page.locator('.photo-loupe').waitFor();
    await page.mouse.move(x, y, { steps: 3 });
    await page.mouse.up();
    await page.getByRole('button', { name: /^Point between 1/ }).waitFor();
    await page.getByText(/^Curve read/).waitFor();
    expect((await kept())[0].photos[0].places.filter(({ role }) => role === 'via')).toHaveLength(1);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByText(/^Curve read/).waitFor();
    const { places, trace } = (await kept())[0].photos[0];
    expect(places.filter(({ role }) => role === 'via')).toHaveLength(0);
    expect(trace?.outOfDate).toBe(false);
    const tip = page.getByRole('button', { name: /^Tip, at/ });
    await tip.focus();
    const before = await tip.getAttribute('aria-label');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => tip.getAttribute('aria-label')).not.toBe(before);
    await page.getByText(/^Curve read/).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => tip.getAttribute('aria-label')).toBe(before);
  });

  test('stands beside the prediction in figures, and is accepted with its report', async () => {
    await page.getByText(/Enter the weight that hung/).waitFor();
    await fill(page, 'Weight that hung', '60 g');
    await page.getByRole('table', { name: /^Seen beside predicted/ }).waitFor();
    const table = page.getByRole('table', { name: /^Seen beside predicted/ });
    expect(await table.getByRole('row').count()).toBe(5);
    const judged = page.getByText(
      /do not belong to one blank|Move one guide|Move \d guides|of your limit|could not be judged/,
    );
    await judged.first().waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Accept: the rod stays so' }).click();
    await page.getByText(/Accepted .*: what was found that day/).waitFor();
    const [{ accepted, report }] = await kept();
    expect(accepted).toBe(true);
    expect(report).toMatch(
      /^\{"rod":"taped","hungKg":0\.06,\S*"picture":"bend\.jpg"\S*"places":\[\{"fromTipM":0,/,
    );
    await page.getByText(/Taped-up rod, 60 g on the tip[\s\S]*bend\.jpg[\s\S]*Tip: /).waitFor();
  });

  test('a mistyped place is named', async () => {
    await fill(page, 'mark 4 up', '1.5 m');
    await page.getByRole('button', { name: 'Read the curve again' }).click();
    await page
      .getByText(/Check the distance of mark 4, or tap it again/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
  });

  test('axe finds nothing, and nothing scrolls sideways', async () => {
    await expectWell(page, [
      [390, 'dark'],
      [820, 'light'],
      [1440, 'dark'],
    ]);
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  test('stays until it is discarded, and undo brings it back', async () => {
    await page.getByRole('button', { name: 'Discard this picture' }).click();
    await expect.poll(() => page.locator('.photo-stage').count()).toBe(0);
    expect((await kept())[0].photos).toEqual([]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.locator('.photo-stage img').waitFor();
    expect((await kept())[0].photos).toHaveLength(1);
  });
});

test('a picture let go on the field, or pasted while another test is open, goes into one test; two fingers zoom it', async () => {
  const hands = await openStep(bench, twoPieceChanges(), 'load-test');
  await hands.setViewportSize({ width: 390, height: 844 });
  const begin = hands.getByRole('button', { name: 'New load test', exact: true });
  for (let i = 0; i < 2; i++) await begin.click();
  const tests = hands.locator('.test-card');
  await expect.poll(() => tests.count()).toBe(2);
  const pictures = () =>
    tests.evaluateAll((cards) => cards.map((card) => card.querySelectorAll('.photo-stage img').length));
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-drop-'));
  const dropped = join(folder, 'drop.jpg');
  writeFileSync(dropped, file);
  const touch = await hands.context().newCDPSession(hands);

  // The older test stands below; a file let go beside its field opens nothing.
  for (const [place, found] of [
    ['h1', [0, 0]],
    ['.test-card:last-of-type .photo-drop', [0, 1]],
  ] as const) {
    await dropFile(hands, touch, place, dropped);
    await expect.poll(pictures, { timeout: 15_000 }).toEqual(found);
  }
  rmSync(folder, { recursive: true });

  expect(await paste(hands, 'main', true)).toBe(true);
  await expect.poll(pictures, { timeout: 15_000 }).toEqual([1, 1]);
  // A table copied elsewhere brings its picture along with its text.
  expect(await paste(hands, '.test-card input', false)).toBe(false);

  const stage = hands.locator('.photo-stage').first();
  await stage.scrollIntoViewIfNeeded();
  const box = await stage.boundingBox();
  if (!box) throw new Error('no picture');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const scale = () =>
    stage.locator('img').evaluate((image) => new DOMMatrix(getComputedStyle(image).transform).a);
  const fingers = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart?: number) =>
    touch.send('Input.dispatchTouchEvent', {
      type,
      touchPoints:
        apart === undefined ? [] : [-1, 1].map((side, id) => ({ x: x + (side * apart) / 2, y, id })),
    });
  const whole = await scale();
  await fingers('touchStart', 40);
  for (let apart = 52; apart <= 160; apart += 12) await fingers('touchMove', apart);
  await fingers('touchEnd');
  await expect.poll(scale).toBeCloseTo(4 * whole, 3);
  await hands.close();
});

/** As the desktop hands a file over. */
async function dropFile(on: Page, session: CDPSession, place: string, path: string): Promise<void> {
  await on.locator(place).scrollIntoViewIfNeeded();
  const box = await on.locator(place).boundingBox();
  if (!box) throw new Error(`${place} is not shown`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const data = { items: [], files: [path], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
    await session.send('Input.dispatchDragEvent', { type, x, y, data });
  }
}

/** Pastes a small picture, with or without the text it came with; whether the page took it. */
function paste(on: Page, place: string, alone: boolean): Promise<boolean> {
  return on
    .locator(place)
    .first()
    .evaluate(async (element, withoutText) => {
      const canvas = document.createElement('canvas');
      const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done));
      const clipboardData = new DataTransfer();
      clipboardData.items.add(new File([blob as Blob], 'image.png', { type: 'image/png' }));
      if (!withoutText) clipboardData.setData('text/plain', '60 g');
      const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
      element.dispatchEvent(event);
      return event.defaultPrevented;
    }, alone);
}

test('a telephone that scans the code sends a picture, and it is on this computer at once', async () => {
  const [{ id }] = await kept();
  const made = await fetch(`${bench.server.address}/api/sharing/code`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  const { code } = (await made.json()) as { code: string };
  // Another device, as far as the server can tell: what a proxy passes on is not of this computer.
  const phone = await bench.openPage(`/pair#${code}/photo/${buildId()}/${id}`, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    extraHTTPHeaders: { 'x-forwarded-for': '192.0.2.7' },
  });
  phone.setDefaultTimeout(30_000);
  await phone.getByRole('button', { name: 'Pair', exact: true }).click();
  await phone.getByRole('heading', { name: 'Picture of a load test' }).waitFor();
  expect(await axeFindings(phone)).toEqual([]);
  await phone.locator('input[capture]').setInputFiles(picture('phone.jpg', file));
  await phone.getByText(/The picture is in the build/).waitFor();
  await page.getByRole('region', { name: 'Picture phone.jpg' }).waitFor();
  const photos = (await kept())[0].photos;
  // The same picture: one attachment's bytes, two places in the record.
  expect(photos.map(({ name }) => name)).toEqual(['bend.jpg', 'phone.jpg']);
  expect(photos[1].hash).toBe(photos[0].hash);
  expect(bench.complaints.filter((words) => !/401|403|422/.test(words))).toEqual([]);
});
