import { expect, test } from 'vitest';
import { endMisses, endsPhoto } from '../../../test/support/ends-photo.ts';
import { cameraProject } from '../camera/camera-model.ts';
import { marksToCamera } from '../camera/marks-check.ts';
import { findEnds } from './find-ends.ts';
import { turnsUpRad } from './judge-line.ts';

/** 500 px a metre, y of the marks' plane upward. */
const marks = [0, 1, 2].flatMap((x) =>
  [0, 1.5].map((y) => ({ pixel: { x: 500 * x + 200, y: 1000 - 500 * y }, plane: { x, y } })),
);
const seen = marksToCamera(marks, { widthPx: 1600, heightPx: 1200 });
if (seen.status === 'refused') throw new Error('the marks were refused');
const { camera } = seen.fit;

/** From level along an arc of a metre, and on along another metre. */
function turning(...byRad: [number, number]) {
  let [x, y, heading] = [0.1, 0.8, 0];
  const path = byRad.flatMap((rad) =>
    Array.from({ length: 50 }, () => {
      heading += rad / 50;
      x += 0.01 * Math.cos(heading);
      y += 0.01 * Math.sin(heading);
      return cameraProject(camera, { x, y });
    }),
  );
  return turnsUpRad({ path, cost: 0, costPerPx: 0 }, camera, 1);
}

test('a line that bends down as under a weight turns nowhere up', () => {
  expect(turning(-0.5, -0.8)).toBeLessThan(0.01);
});

test('a line that leaves the blank for a cable turns up as the cable does, but for what is smoothed', () => {
  expect(turning(-0.5, 0.4)).toBeGreaterThan(0.25);
  expect(turning(-0.5, 0.4)).toBeLessThan(0.45);
});

/** One of the painted pictures that were looked at. */
test('a cable that begins at the clamp and is clearer than the blank is not taken for it', () => {
  const photo = endsPhoto(35006, 1400);
  const answer = findEnds(photo.known, photo.pixels);
  if (answer.status !== 'found') throw new Error(answer.status);
  const { butt, tip } = endMisses(photo, answer.ends);
  expect(Math.max(butt, tip)).toBeLessThan(0.00635);
}, 30_000);
