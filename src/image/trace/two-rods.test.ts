import { describe, expect, test } from 'vitest';
import { type Photo, paintPhoto } from '../../../test/render/photo.ts';
import { traceImage } from './trace-image.ts';
import type { TraceRequest } from './trace-request.ts';

/**
 * Two bent rods that cross, and pictures with one, painted by a renderer that shares no code with the tracer: plain, hard
 * and strange walls by turns. RODS says how many of each (24 in the long run); the small share is the first of them.
 */
const count = Number(process.env.RODS ?? 2);
const [widthPx, heightPx] = [2000, 1500];

function painted(seed: number, secondRod: 'crossing' | 'none'): Photo {
  const walls = { hard: seed % 3 === 1, strange: seed % 3 === 2 };
  return paintPhoto({ seed, widthPx, heightPx, marks: 6, secondRod, ...walls });
}

function said({ picture, marks }: Photo, ends: TraceRequest['ends']): string {
  const { width, height, rgb: data } = picture;
  const answer = traceImage({ marks, ends }, { width, height, channels: 3, data });
  return answer.status === 'lost'
    ? 'lost'
    : answer.findings.map(({ path, code }) => `${path}: ${code}`).join('\n');
}

const mixture = /ends: trace\/two-rods/;
const another = /image: trace\/other-rod/;

describe(`two rods in the frame, ${count} pictures`, () => {
  test('butt tapped on one and tip on the other is said; the one tapped rightly is not called a mixture', () => {
    let mixturesSaid = 0;
    let othersSaid = 0;
    let wronglyMixed = 0;
    for (let seed = 401; seed < 401 + count; seed++) {
      const photo = painted(seed, 'crossing');
      const { ends, other } = photo;
      if (!other) throw new Error('no second rod was painted');
      const mixed = said(
        photo,
        seed % 2 === 1 ? { butt: ends.butt, tip: other.ends.tip } : { butt: other.ends.butt, tip: ends.tip },
      );
      if (mixed === 'lost' || mixture.test(mixed)) mixturesSaid++;
      const rightly = said(photo, ends);
      if (another.test(rightly)) othersSaid++;
      if (mixture.test(rightly)) wronglyMixed++;
    }
    expect(count - mixturesSaid).toBeLessThanOrEqual(Math.floor(count / 8));
    expect(count - othersSaid).toBeLessThanOrEqual(Math.floor(count / 6));
    expect(wronglyMixed).toBeLessThanOrEqual(Math.floor(count / 12));
  }, 1_800_000);

  test('cables, shelf edges and shadows are taken for no rod', () => {
    const alarms: number[] = [];
    for (let seed = 401; seed < 401 + count; seed++) {
      const photo = painted(seed, 'none');
      const words = said(photo, photo.ends);
      if (mixture.test(words) || another.test(words)) alarms.push(seed);
    }
    expect(alarms.length, `seeds ${alarms}`).toBeLessThanOrEqual(Math.floor(count / 12));
  }, 1_800_000);
});
