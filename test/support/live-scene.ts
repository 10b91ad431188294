/** Frames of one invented blank on its stand: nothing hung, then more and more. */
import type { LiveKnown } from '../../src/image/live/look-live.ts';
import type { Pixels } from '../../src/image/pixels.ts';
import { liveFrames } from '../render/live-frames.ts';
import { bentOf } from './rendered-stand.ts';
import { randomBlank, trueCurve } from './simulated-bench.ts';
import { weightFor } from './stand-blank.ts';

export function liveScene(seed: number, widthPx: number) {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const thirdKg = weightFor(blank, 1 / 3);
  const hungKg = [0, 0.6 * thirdKg, 1.2 * thirdKg];
  const bent = hungKg.map((massKg) =>
    bentOf(
      blank,
      trueCurve(blank, {
        buttAngleRad: 0,
        clampFromTipM: blank.lengthM,
        turnedRad: 0,
        hung: massKg > 0 ? [{ fromTipM: 0, massKg }] : [],
      }),
    ),
  );
  const { camera, wall, paint } = liveFrames(bent, { seed, widthPx });
  const frame = (index: number): Pixels => {
    const { width, height, rgb } = paint(bent[index], index, hungKg[index] > 0);
    return { width, height, channels: 3, data: rgb };
  };
  const [{ x, y }] = bent[0].axis;
  const known: LiveKnown = { wall, lengthM: blank.lengthM, clamp: { atM: [x, y], sigmaM: 0.003 } };
  return { blank, hungKg, bent, camera, frame, known };
}
