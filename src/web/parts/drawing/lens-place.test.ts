import { expect, test } from 'vitest';
import { lensPlace } from './lens-place.ts';

const sheet = { widthPx: 900, heightPx: 430 };
/** A rod bent over the sheet like an arch, points every few pixels. */
const arch = Array.from({ length: 120 }, (_, i) => {
  const turn = (Math.PI * i) / 119;
  return { x: 450 - 300 * Math.cos(turn), y: 380 - 300 * Math.sin(turn) };
});

test('the lens stands clear of all that is drawn, whole on the sheet, near what it enlarges', () => {
  const ring = arch[60];
  const lens = lensPlace(ring, arch, sheet);
  if (!lens) throw new Error('an arch of 600 px has room for a lens');
  for (const { x, y } of arch) expect(Math.hypot(x - lens.x, y - lens.y)).toBeGreaterThan(lens.radius);
  expect(lens.y + lens.radius).toBeLessThan(sheet.heightPx);
  const across = Math.hypot(lens.x - ring.x, lens.y - ring.y);
  expect(across).toBeLessThan(lens.radius + 40);
});

test('a smaller sheet has a smaller lens, a crowded one none', () => {
  const small = lensPlace({ x: 170, y: 40 }, [{ x: 170, y: 20 }], { widthPx: 340, heightPx: 150 });
  expect(small?.radius).toBeLessThan(70);
  const crowd = Array.from({ length: 400 }, (_, i) => ({ x: 20 * (i % 20), y: 20 * Math.floor(i / 20) }));
  expect(lensPlace({ x: 100, y: 100 }, crowd, { widthPx: 400, heightPx: 400 })).toBeUndefined();
});
