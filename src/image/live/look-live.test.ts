import { beforeAll, describe, expect, test } from 'vitest';
import { judgeTrace } from '../../../test/render/judge-trace.ts';
import { liveScene } from '../../../test/support/live-scene.ts';
import type { Pixels } from '../pixels.ts';
import { lookLive } from './look-live.ts';

/** Frames of 2 MP by a renderer that shares no code with what looks at them. */
let scene: ReturnType<typeof liveScene>;
let frames: Pixels[];
beforeAll(() => {
  scene = liveScene(33, 1600);
  frames = [0, 2].map(scene.frame);
}, 120_000);

describe('a frame of the live view', () => {
  test('is read by itself, with nothing hung and with a weight: marks, ends and curve', () => {
    for (const [i, frame] of frames.entries()) {
      const look = lookLive(frame, scene.known);
      if (look.status !== 'traced') throw new Error(JSON.stringify(look));
      expect(look.marks.filter(({ known }) => known).length).toBeGreaterThanOrEqual(4);
      expect(judgeTrace(look.points, scene.bent[2 * i].axis).rmsM).toBeLessThan(0.003);
    }
  });

  test('half black, or with no marks of this wall, shows no curve', () => {
    const black = { ...frames[0], data: frames[0].data.slice().fill(0, frames[0].data.length / 2) };
    expect(lookLive(black, scene.known).status).not.toBe('traced');
    const elsewhere = {
      ...scene.known,
      wall: scene.known.wall.map((one) => ({ ...one, number: one.number + 12 })),
    };
    expect(lookLive(frames[0], elsewhere).status).toBe('few-marks');
  });

  test('without a clamp asks for taps; taps are taken', () => {
    const { clamp: _, ...unknown } = scene.known;
    expect(lookLive(frames[0], unknown).status).toBe('taps-wanted');
    const [butt, tip] = [scene.bent[0].axis[0], scene.bent[0].axis.at(-1)!].map((at) => {
      const { x, y } = scene.camera.project(at);
      return [x, y] as const;
    });
    expect(lookLive(frames[0], { ...unknown, ends: { butt, tip } }).status).toBe('traced');
  });
});
