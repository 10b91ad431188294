import { describe, expect, test } from 'vitest';
import { traceImage } from '../../src/image/trace/trace-image.ts';
import { bendBlank, blankChoice } from './bent-blank.ts';
import { judgeTrace } from './judge-trace.ts';
import { plainCamera } from './plain-camera.ts';
import { plainStand } from './plain-stand.ts';
import { randomFrom } from './random.ts';

describe('the plainer renderer', () => {
  test('casts rays to where its lens and turn project from, and stays a turn', () => {
    const frame = { widthPx: 1200, heightPx: 900, left: -1, right: 1.5, bottom: -0.8, top: 0.7 };
    for (let seed = 1; seed < 20; seed++) {
      const camera = plainCamera(randomFrom(seed), frame);
      for (const [x, y] of [
        [40, 30],
        [1100, 200],
        [600, 880],
      ]) {
        const back = camera.project(camera.cast(x, y));
        expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(1e-6);
      }
      // y is up on the wall and down in the picture; the picture is no mirror image.
      expect(camera.project({ x: 0, y: 0.5 }).y).toBeLessThan(camera.project({ x: 0, y: -0.5 }).y);
      expect(camera.project({ x: 0.5, y: 0 }).x).toBeGreaterThan(camera.project({ x: -0.5, y: 0 }).x);
    }
  });

  test('paints a blank that the tracer finds where it is', () => {
    const blank = bendBlank(blankChoice(randomFrom(8)), 400);
    const { camera, marks, paint } = plainStand([blank], { seed: 8, widthPx: 1200, marks: 6 });
    const { width, height, rgb: data } = paint(blank, 0, true);
    const seen = ({ x, y }: { x: number; y: number }) => {
      const at = camera.project({ x, y });
      return [at.x, at.y] as const;
    };
    const answer = traceImage(
      {
        marks: marks.map((mark) => ({ px: seen(mark), atM: [mark.x, mark.y] as const })),
        ends: { butt: seen(blank.axis[0]), tip: seen(blank.axis[blank.axis.length - 1]) },
      },
      { width, height, channels: 3, data },
    );
    if (answer.status !== 'converged') throw new Error(answer.status);
    expect(judgeTrace(answer.points, blank.axis).rmsM).toBeLessThan(0.002);
  });
});
