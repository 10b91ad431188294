import { describe, expect, test } from 'vitest';
import { randomFrom } from '../../../test/render/random.ts';
import { centrelineNormals, centrelineOf, whittaker } from './centreline.ts';

describe('centreline', () => {
  test('resampling keeps ends and equal steps', () => {
    const line = centrelineOf(
      [
        { x: 0, y: 0 },
        { x: 30, y: 0 },
        { x: 30, y: 41 },
      ],
      2,
    );
    expect([line.x[0], line.y[0], line.x.at(-1), line.y.at(-1)]).toEqual([0, 0, 30, 41]);
    for (let i = 1; i <= 10; i++) expect(line.x[i] - line.x[i - 1]).toBeCloseTo(line.stepPx, 9);
  });

  test('normals of a circle point along its radius', () => {
    const circle = Array.from({ length: 200 }, (_, i) => ({
      x: 300 * Math.cos(i / 60),
      y: 300 * Math.sin(i / 60),
    }));
    const line = centrelineOf(circle, 3);
    const normals = centrelineNormals(line);
    for (let i = 5; i < line.x.length - 5; i++) {
      const along = (normals.x[i] * line.x[i] + normals.y[i] * line.y[i]) / 300;
      expect(Math.abs(along)).toBeGreaterThan(0.9995);
    }
  });

  test('the smoother leaves a parabola as it is, even across a gap', () => {
    const values = Array.from({ length: 300 }, (_, i) => 3 + 0.2 * i - 0.001 * i * i);
    const weights = values.map((_, i) => (i > 100 && i < 180 ? 0 : 1));
    const smooth = whittaker(
      values.map((value, i) => (weights[i] === 0 ? 1e3 : value)),
      weights,
      60,
    );
    for (let i = 0; i < 300; i++) expect(smooth[i]).toBeCloseTo(values[i], 3);
  });

  test('a wave of the given length is halved, longer ones pass, shorter ones go', () => {
    const gain = (wave: number): number => {
      const values = Array.from({ length: 2000 }, (_, i) => Math.sin((2 * Math.PI * i) / wave));
      const smooth = whittaker(values, new Float64Array(2000).fill(1), 80);
      return Math.max(...smooth.subarray(500, 1500));
    };
    expect(gain(80)).toBeCloseTo(0.5, 2);
    expect(gain(240)).toBeGreaterThan(0.99);
    expect(gain(30)).toBeLessThan(0.01);
  });

  test('noise falls with the length smoothed over', () => {
    const random = randomFrom(1);
    const noise = Array.from({ length: 4000 }, () => random.normal());
    const rms = (wave: number): number => {
      const smooth = whittaker(noise, new Float64Array(4000).fill(1), wave);
      return Math.sqrt(smooth.reduce((sum, value) => sum + value * value, 0) / 4000);
    };
    // Four times the length halves the rms of white noise.
    expect(rms(40) / rms(160)).toBeGreaterThan(1.7);
    expect(rms(40) / rms(160)).toBeLessThan(2.3);
  });
});
