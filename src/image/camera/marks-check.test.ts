import { describe, expect, test } from 'vitest';
import { cameraChoice, cameraFor } from '../../../test/render/camera.ts';
import { randomFrom } from '../../../test/render/random.ts';
import type { Mark } from './camera-problem.ts';
import { marksToCamera } from './marks-check.ts';

const picture = { widthPx: 4000, heightPx: 3000 };

/** `scale` shrinks the wall and stands the camera nearer. */
function marksOf(seed: number, count: number, scale = 1): Mark[] {
  const random = randomFrom(seed);
  const frame = { left: -0.2 * scale, right: 2.6 * scale, bottom: -0.3 * scale, top: 1.6 * scale };
  const camera = cameraFor(cameraChoice(random, picture.widthPx, picture.heightPx, frame));
  const round = [
    [-0.1, -0.2],
    [2.5, -0.2],
    [2.5, 1.5],
    [-0.1, 1.5],
    [1.2, 1.45],
    [1.2, -0.1],
    [0, 0.6],
    [2.4, 0.6],
  ].slice(0, count);
  return round.map(([u, v]) => {
    const [x, y] = [u * scale, v * scale];
    const at = camera.project({ x, y });
    return { plane: { x, y }, pixel: { x: at.x + 0.5 * random.normal(), y: at.y + 0.5 * random.normal() } };
  });
}

/** One distance mistyped by a hand's slip: 0.3 m for 0.5 m, an inch too many, two figures swapped. */
function withSlip(marks: Mark[], index: number, slipM: number): Mark[] {
  return marks.map((mark, i) =>
    i === index ? { ...mark, plane: { ...mark.plane, x: mark.plane.x + slipM } } : mark,
  );
}

describe('marks', () => {
  test('good marks bring no finding', () => {
    for (let seed = 1; seed <= 10; seed++) {
      for (const count of [4, 5, 6, 8]) {
        expect(marksToCamera(marksOf(seed, count), picture)).toMatchObject({ findings: [], leftOut: [] });
      }
    }
  });

  test('among six or more, a distance off by an inch or more is found and named', () => {
    for (let seed = 1; seed <= 5; seed++) {
      for (const [count, index, slipM] of [
        [6, 2, 0.0254],
        [6, 5, -0.2],
        [8, 0, 0.0254],
        [8, 7, 0.1],
      ]) {
        const answer = marksToCamera(withSlip(marksOf(seed, count), index, slipM), picture);
        expect(answer, `seed ${seed}, ${count} marks`).toMatchObject({
          status: 'converged',
          leftOut: [index],
        });
        expect(answer.findings[0].path).toBe(`marks[${index}].atM`);
        expect(answer.findings[0]).toMatchObject({ code: 'camera/mark-odd', values: { mark: index + 1 } });
      }
    }
  });

  test('an inch on a wall of 1.2 m: named among six, seldom wrongly among five, never among four', () => {
    const tally = { 4: [0, 0], 5: [0, 0], 6: [0, 0] };
    for (const count of [4, 5, 6] as const) {
      for (let index = 0; index < count; index++) {
        const marks = marksOf(21, count, 0.46);
        const answer = marksToCamera(withSlip(marks, index, 0.0254), picture);
        const leftOut = answer.status === 'converged' ? answer.leftOut : [];
        if (leftOut.length === 1 && leftOut[0] === index) tally[count][0]++;
        else if (leftOut.length > 0) tally[count][1]++;
      }
    }
    expect(tally[6][0]).toBeGreaterThanOrEqual(5);
    expect(tally[6][1]).toBe(0);
    expect(tally[5][1]).toBeLessThanOrEqual(1);
    expect(tally[4]).toEqual([0, 0]);
  });

  test('where all are told a few millimetres wrong, hardly ever is one blamed', () => {
    let blamed = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomFrom(seed + 900);
      const told = marksOf(seed, 6).map(({ pixel, plane: { x, y } }) => ({
        pixel,
        plane: { x: x + 0.0025 * random.normal(), y: y + 0.0025 * random.normal() },
      }));
      const answer = marksToCamera(told, picture);
      if (answer.status === 'converged' && answer.leftOut.length > 0) blamed++;
    }
    expect(blamed).toBeLessThanOrEqual(1);
  });

  test('two slips among eight are both found', () => {
    const answer = marksToCamera(withSlip(withSlip(marksOf(2, 8), 1, 0.1), 6, -0.3), picture);
    expect(answer).toMatchObject({ status: 'converged' });
    if (answer.status === 'converged') expect(answer.leftOut.toSorted()).toEqual([1, 6]);
  });

  test('four marks that fit no usual camera are called in doubt', () => {
    const answer = marksToCamera(withSlip(marksOf(3, 4), 2, 0.5), picture);
    expect(answer.status).toBe('converged');
    expect(answer.findings.map((finding) => finding.path)).toContain('marks');
  });

  test('too few, on one line, twice the same and outside are refused at the field', () => {
    const good = marksOf(4, 6);
    const paths = (marks: Mark[]): string[] => {
      const answer = marksToCamera(marks, picture);
      return answer.status === 'refused' ? answer.findings.map((finding) => finding.path) : [];
    };
    expect(paths([])).toEqual(['marks']);
    expect(paths(good.slice(0, 3))).toEqual(['marks']);
    const line = good.map((_, i) => ({
      plane: { x: 0.4 * i, y: 0.2 * i },
      pixel: { x: 300 + 600 * i, y: 2500 - 300 * i },
    }));
    expect(paths(line)).toEqual(['marks']);
    expect(paths([...good, { ...good[0], pixel: { x: 2000, y: 20 } }])).toEqual(['marks[6].atM']);
    expect(paths([...good.slice(1), { ...good[0], pixel: { x: 5000, y: 20 } }])).toEqual(['marks[5].px']);
    expect(paths([...good.slice(1), { ...good[0], pixel: { x: Number.NaN, y: 20 } }])).toEqual(['marks[5]']);
  });

  test('all marks but one on a line is named as weak', () => {
    const marks = marksOf(6, 8);
    const three = [marks[0], marks[1], marks[5], marks[4]].map((mark) => ({ ...mark }));
    const random = randomFrom(1);
    const camera = cameraFor(
      cameraChoice(random, picture.widthPx, picture.heightPx, {
        left: -0.2,
        right: 2.6,
        bottom: -0.3,
        top: 1.6,
      }),
    );
    const plane = [
      { x: 0, y: 0 },
      { x: 1.2, y: 0 },
      { x: 2.4, y: 0 },
      { x: 1, y: 1 },
    ];
    const answer = marksToCamera(
      three.map((_, i) => ({ plane: plane[i], pixel: camera.project(plane[i]) })),
      picture,
    );
    expect(answer.findings.map(({ code }) => code)).toContain('camera/marks-nearly-on-line');
  });
});
