import { beforeAll, describe, expect, test } from 'vitest';
import { canvasOf } from '../../../test/render/canvas.ts';
import { develop } from '../../../test/render/develop.ts';
import { enlarged } from '../../../test/render/enlarge.ts';
import { judgeTrace } from '../../../test/render/judge-trace.ts';
import { type Photo, paintPhoto } from '../../../test/render/photo.ts';
import { randomFrom } from '../../../test/render/random.ts';
import { strokeTube } from '../../../test/render/stroke.ts';
import { paintWall } from '../../../test/render/wall.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { planeOfMarks } from '../camera/plane-of-marks.ts';
import type { Pixels } from '../pixels.ts';
import { traceImage } from './trace-image.ts';
import type { TraceRequest } from './trace-request.ts';

/** One small picture for all: 1200 × 900, six marks, nothing but the rod before a wall. */
let photo: Photo;
let pixels: Pixels;
let asked: TraceRequest;
beforeAll(() => {
  photo = paintPhoto({ seed: 4, widthPx: 1200, heightPx: 900, marks: 6, clutter: 0 });
  const { width, height, rgb: data } = photo.picture;
  pixels = { width, height, channels: 3, data };
  asked = { marks: photo.marks, ends: photo.ends };
});

function trace(change: Partial<TraceRequest> = {}, picture = pixels) {
  return traceImage({ ...asked, ...change }, picture);
}

function converged(answer: ReturnType<typeof trace>) {
  if (answer.status !== 'converged') throw new Error(`${answer.status}: ${inWords(answer.findings[0])}`);
  return answer;
}

describe('a trace', () => {
  test('lies on the true curve, says so, and finds nothing to complain of', () => {
    const answer = converged(trace());
    const { rmsM, localRmsM } = judgeTrace(answer.points, photo.axis);
    expect(rmsM).toBeLessThan(0.004);
    expect(localRmsM).toBeLessThan(0.001);
    expect(answer.findings).toEqual([]);
    expect(answer.lens.estimated).toBe(true);
  });

  test('of 39 MP, where the blank is several times as thick, is as near the truth', () => {
    const small = converged(trace());
    const large = enlarged(photo, 6);
    const { width, height, rgb: data } = large.picture;
    const { marks, ends } = large;
    const answer = converged(traceImage({ marks, ends }, { width, height, channels: 3, data }));
    const { rmsM, localRmsM } = judgeTrace(answer.points, photo.axis);
    expect(rmsM).toBeLessThan(0.004);
    expect(localRmsM).toBeLessThan(0.001);
    expect(answer.points[0].halfWidthPx / small.points[0].halfWidthPx / 6).toBeCloseTo(1, 0);
  });

  test('of an upright picture, turned by a quarter, is the same curve', () => {
    const { width, height, channels, data } = pixels;
    const turned = new Uint8Array(data.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++)
        for (let c = 0; c < 3; c++)
          turned[3 * (x * height + height - 1 - y) + c] = data[3 * (y * width + x) + c];
    const turn = ([x, y]: readonly [number, number]): [number, number] => [height - 1 - y, x];
    const answer = converged(
      trace(
        {
          marks: asked.marks.map(({ px, atM }) => ({ px: turn(px), atM })),
          ends: { butt: turn(asked.ends.butt), tip: turn(asked.ends.tip) },
        },
        { width: height, height: width, channels, data: turned },
      ),
    );
    expect(judgeTrace(answer.points, photo.axis).rmsM).toBeLessThan(0.004);
  });

  test('of a mirrored picture is the same curve: only marks and taps count', () => {
    const { width, height, channels, data } = pixels;
    const flipped = new Uint8Array(data.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++)
        for (let c = 0; c < 3; c++)
          flipped[3 * (y * width + x) + c] = data[3 * (y * width + width - 1 - x) + c];
    const flip = ([x, y]: readonly [number, number]): [number, number] => [width - 1 - x, y];
    const answer = converged(
      trace(
        {
          marks: asked.marks.map(({ px, atM }) => ({ px: flip(px), atM })),
          ends: { butt: flip(asked.ends.butt), tip: flip(asked.ends.tip) },
        },
        { width, height, channels, data: flipped },
      ),
    );
    expect(judgeTrace(answer.points, photo.axis).rmsM).toBeLessThan(0.004);
  });
});

describe('what cannot be right is said at its field', () => {
  test('no marks, three marks, marks on one line', () => {
    const onLine = asked.marks.map((_, i) => ({
      px: [100 + 150 * i, 100 + 90 * i] as const,
      atM: [0.3 * i, -0.18 * i] as const,
    }));
    for (const marks of [[], asked.marks.slice(0, 3), onLine]) {
      const answer = trace({ marks });
      expect(answer.status).toBe('refused');
      expect(answer.findings.map(({ path }) => path)).toEqual(['marks']);
    }
  });

  test('taps on nothing, as in a picture of something else, are named one by one', () => {
    const random = randomFrom(9);
    const canvas = canvasOf(1200, 900);
    paintWall(canvas, random, { red: 0.6, green: 0.58, blue: 0.55 });
    const { rgb } = develop(canvas, random, { blurPx: 0.7, grain: 2, sharpen: 0, exposure: 1 });
    const wall: Pixels = { width: 1200, height: 900, channels: 3, data: rgb };
    const [butt, tip] = [trace({}, wall), trace({ ends: { ...asked.ends, tip: [600, 40] } })];
    const [x, y] = asked.ends.butt.map(Math.round);
    expect(butt).toMatchObject({ status: 'lost', reachedPx: [x, y] });
    expect(butt.findings.at(-1)).toMatchObject({ path: 'ends.butt' });
    expect(butt.findings.at(-1)).toMatchObject({
      code: 'trace/nothing-at-tap',
      values: { xPx: x, yPx: y },
    });
    expect(tip).toMatchObject({ status: 'lost', reachedPx: [600, 40] });
    expect(tip.findings.at(-1)).toMatchObject({ path: 'ends.tip' });
  });

  test('a mistyped distance is named at nearly every mark, never the wrong one', () => {
    const size = { widthPx: pixels.width, heightPx: pixels.height };
    const blamed = asked.marks.map((_, slipped) => {
      const marks = asked.marks.map(({ px, atM }, i) => ({
        px,
        atM: [atM[0] + (i === slipped ? 0.15 : 0), atM[1]] as const,
      }));
      const answer = planeOfMarks({ marks }, size);
      if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
      if (answer.leftOut.length > 0) {
        expect(answer.leftOut).toEqual([slipped]);
        expect(answer.findings[0]).toMatchObject({ path: `marks[${slipped}].atM` });
        expect(answer.findings[0]).toMatchObject({ code: 'camera/mark-odd', values: { mark: slipped + 1 } });
      }
      return answer.leftOut.length;
    });
    expect(blamed.filter((count) => count === 1).length).toBeGreaterThanOrEqual(4);
  });

  test('butt and tip swapped, where the taper is wide enough to see', () => {
    const random = randomFrom(5);
    const canvas = canvasOf(900, 500);
    paintWall(canvas, random, { red: 0.6, green: 0.58, blue: 0.55 });
    const axis = Array.from({ length: 401 }, (_, i) => ({ x: 40 + 2 * i, y: 100 + 0.0004 * (2 * i) ** 2 }));
    const lamp = { sideways: 0.3, ambient: 0.4, diffuse: 0.4, gloss: 0.05, glossWidth: 0.3 };
    const ink = { red: 0.05, green: 0.05, blue: 0.06 };
    strokeTube(
      canvas,
      axis,
      (along) => 6.5 - (5 * along) / 400,
      () => ink,
      lamp,
    );
    const { width, height, rgb } = develop(canvas, random, {
      blurPx: 0.7,
      grain: 2,
      sharpen: 0,
      exposure: 1,
    });
    const marks = [
      [20, 20],
      [880, 20],
      [880, 480],
      [20, 480],
    ].map(([x, y]) => ({ px: [x, y] as const, atM: [x / 400, -y / 400] as const }));
    const [butt, tip] = [axis[0], axis[400]].map(({ x, y }) => [x, y] as const);
    const said = (ends: TraceRequest['ends']) =>
      traceImage({ marks, ends }, { width, height, channels: 3, data: rgb }).findings.map(({ code }) => code);
    expect(said({ butt: tip, tip: butt })).toContain('trace/ends-swapped');
    expect(said({ butt, tip })).not.toContain('trace/ends-swapped');
  });

  test('a tap outside the picture, and two taps on one place', () => {
    const outside = trace({ ends: { ...asked.ends, tip: [5000, 10] } });
    expect(outside).toMatchObject({ status: 'refused', findings: [{ path: 'ends.tip' }] });
    const same = trace({ ends: { butt: asked.ends.butt, tip: asked.ends.butt } });
    expect(same).toMatchObject({ status: 'refused', findings: [{ path: 'ends.tip' }] });
  });

  test('a blank that leaves the frame: an end tapped at the picture’s edge', () => {
    // The left part of the picture, with the butt's end and most of the blank.
    const { data, width, height } = pixels;
    const cutAt = Math.round(0.5 * (asked.ends.butt[0] + asked.ends.tip[0]));
    const from = asked.ends.butt[0] < asked.ends.tip[0] ? 0 : cutAt;
    const wide = asked.ends.butt[0] < asked.ends.tip[0] ? cutAt : width - cutAt;
    const part = new Uint8Array(3 * wide * height);
    for (let y = 0; y < height; y++)
      part.set(data.subarray(3 * (y * width + from), 3 * (y * width + from + wide)), 3 * y * wide);
    const whole = converged(trace());
    const leaves = whole.points.filter(({ px }) => px[0] > from + 2 && px[0] < from + wide - 2).at(-1)!;
    const shifted = ([x, y]: readonly [number, number]): [number, number] => [x - from, y];
    const marks = asked.marks.map(({ px, atM }) => ({ px: shifted(px), atM }));
    const inside = marks.filter(({ px }) => px[0] > 0 && px[0] < wide);
    // What is left of the marks does not matter here: two more from the whole picture's own plane.
    const more = whole.points
      .filter((_, i) => i % 40 === 20)
      .filter(({ px }) => px[0] > from && px[0] < from + wide)
      .map(({ px, xM, yM }) => ({ px: shifted(px), atM: [xM, yM] as const }));
    const answer = traceImage(
      {
        marks: [...inside, ...more],
        ends: { butt: shifted(asked.ends.butt), tip: shifted(leaves.px) },
      },
      { width: wide, height, channels: 3, data: part },
    );
    expect(answer.findings).toContainEqual({
      path: 'ends.tip',
      code: 'trace/end-at-edge',
      values: { end: 'tip' },
    });
  });

  test('a picture of something else is not passed off as a blank', () => {
    const { width, height } = pixels;
    const plain = new Uint8Array(3 * width * height);
    for (let i = 0; i < plain.length; i++) plain[i] = 120 + ((i * 2654435761) % 7);
    const answer = trace({}, { width, height, channels: 3, data: plain });
    if (answer.status === 'converged') {
      expect(answer.seenShare).toBeLessThan(0.6);
      expect(answer.findings.map(({ code }) => code)).toContain('trace/edges-seldom');
    } else expect(answer.status).toBe('lost');
  });
});
