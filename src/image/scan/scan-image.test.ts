import { expect, test } from 'vitest';
import { paintScan } from '../../../test/render/scan-sheet.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { scanImage } from './scan-image.ts';

/** Sheets painted by a renderer that shares no code with the scan, with the truth of every guide. */
test('painted sheets: guides found, none invented, feet out of line to a tenth of a millimetre and a degree', () => {
  const offsetsMm: number[] = [];
  const anglesDeg: number[] = [];
  let painted = 0;
  for (const seed of [1, 2, 3, 4]) {
    const sheet = paintScan({ seed, guides: 3, widthMm: 100, heightMm: 70, clutter: true, hard: seed > 2 });
    const { width, height, rgb: data } = sheet.picture;
    const answer = scanImage({ dpi: sheet.dpi }, { width, height, channels: 3, data });
    if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
    const matched = sheet.guides.flatMap((guide) => {
      const found = answer.guides.find(({ centrePx }) => distance(centrePx, guide.centrePx) < 60);
      return found ? [{ found, guide }] : [];
    });
    painted += sheet.guides.length;
    expect(answer.guides.length, 'none is invented').toBe(matched.length);
    for (const { found, guide } of matched) {
      offsetsMm.push(1000 * Math.abs(Math.abs(found.offsetM) - Math.abs(guide.offsetM)));
      anglesDeg.push((180 / Math.PI) * Math.abs(Math.abs(found.angleRad) - Math.abs(guide.angleRad)));
    }
  }
  expect(offsetsMm.length).toBeGreaterThanOrEqual(0.9 * painted);
  expect(ninetieth(offsetsMm)).toBeLessThan(0.12);
  expect(ninetieth(anglesDeg)).toBeLessThan(1.2);
}, 120_000);

test('a guide lying on another is said, with its place, and neither is measured', () => {
  const sheet = paintScan({ seed: 5, guides: 1, dpi: 300, widthMm: 60, heightMm: 45, darkGround: false });
  const { width, height, rgb } = sheet.picture;
  const [cx, cy] = sheet.guides[0].centrePx.map(Math.round);
  // The guide, and itself turned a quarter about its middle: wherever either is dark, the picture is.
  const data = rgb.map((value, at) => {
    const [x, y] = [Math.floor(at / 3) % width, Math.floor(at / 3 / width)];
    const [fromX, fromY] = [cx + (y - cy), cy - (x - cx)];
    const inside = fromX >= 0 && fromY >= 0 && fromX < width && fromY < height;
    return inside ? Math.min(value, rgb[3 * (fromY * width + fromX) + (at % 3)]) : value;
  });
  const answer = scanImage({ dpi: sheet.dpi }, { width, height, channels: 3, data });
  if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
  expect(answer.guides).toEqual([]);
  expect(answer.findings.map(({ code }) => code)).toContain('scan/touching');
}, 120_000);

test('at half the resolution a guide is known as one of the wrong size', () => {
  const sheet = paintScan({ seed: 5, guides: 1, dpi: 300, widthMm: 60, heightMm: 45 });
  const { width, height, rgb: data } = sheet.picture;
  const answer = scanImage({ dpi: 1200 }, { width, height, channels: 3, data }, { statedDpi: 300 });
  if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
  expect(answer.findings).toContainEqual({
    path: 'dpi',
    code: 'scan/dpi-differs',
    values: { dpi: 1200, fileDpi: 300 },
  });
  expect(answer.guides).toEqual([]);
}, 120_000);

test('the smallest snakes, 10 to 12 mm over both feet, are found', () => {
  const count = Number(process.env.SMALL_SNAKES ?? 3);
  for (let seed = 24; seed < 24 + count; seed++) {
    const sheet = paintScan({ seed, guides: 1, widthMm: 56, heightMm: 50, clutter: true, size: -0.28 });
    const { width, height, rgb: data } = sheet.picture;
    const answer = scanImage({ dpi: sheet.dpi }, { width, height, channels: 3, data });
    if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
    const [guide] = sheet.guides;
    expect(answer.guides.map(({ centrePx }) => distance(centrePx, guide.centrePx) < 20)).toEqual([true]);
    expect(Math.abs(answer.guides[0].lengthM - guide.lengthM)).toBeLessThan(0.0004);
    expect(Math.abs(answer.guides[0].offsetM - guide.offsetM)).toBeLessThan(0.00012);
  }
}, 120_000);

test('a frame larger than any guide is passed over and said; the guide inside it is measured', () => {
  const paint = {
    seed: 3,
    guides: 1,
    dpi: 300,
    widthMm: 110,
    heightMm: 75,
    clutter: false,
    darkGround: false,
  };
  const sheet = paintScan(paint);
  const { width, height, rgb } = sheet.picture;
  const mm = (length: number) => Math.round((length * 300) / 25.4);
  const data = rgb.map((value, at) => {
    const [x, y] = [Math.floor(at / 3) % width, Math.floor(at / 3 / width)];
    const within = (rim: number) =>
      x >= mm(rim) && y >= mm(rim) && x < width - mm(rim) && y < height - mm(rim);
    return within(7) && !within(8) ? 40 : value;
  });
  const answer = scanImage({ dpi: 300 }, { width, height, channels: 3, data });
  if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
  expect(answer.guides.map(({ centrePx }) => distance(centrePx, sheet.guides[0].centrePx) < 20)).toEqual([
    true,
  ]);
  // the frame's diagonal: 96 mm by 61 mm
  expect(answer.findings).toMatchObject([
    { code: 'scan/too-large', values: { acrossM: expect.closeTo(0.114, 2) } },
  ]);
}, 120_000);

const distance = (a: readonly number[], b: readonly number[]) => Math.hypot(a[0] - b[0], a[1] - b[1]);
function ninetieth(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(0.9 * (values.length - 1))];
}
