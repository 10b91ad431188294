import { describe, expect, test } from 'vitest';
import { type Camera, cameraBackProject } from './camera-model.ts';
import { cameraAwayM, cameraOverPlane } from './stand-off.ts';

/** A camera 4 m before the wall, turned 0.2 rad sideways and 0.1 rad up; written out by hand, not by the model. */
const [yaw, pitch, away] = [0.2, 0.1, 4];
const turn = [
  [Math.cos(yaw), 0, Math.sin(yaw)],
  [Math.sin(pitch) * Math.sin(yaw), Math.cos(pitch), -Math.sin(pitch) * Math.cos(yaw)],
  [-Math.cos(pitch) * Math.sin(yaw), Math.sin(pitch), Math.cos(pitch) * Math.cos(yaw)],
];
const centre = [0.7, 0.4, -away];
const seen = (at: readonly number[]) =>
  turn.map((row) => row.reduce((sum, a, i) => sum + a * (at[i] - centre[i]), 0));

/** `scale`: any, a picture does not tell it. */
function camera(scale: number): Camera {
  const plane = new Float64Array(9);
  const origin = seen([0, 0, 0]);
  for (let row = 0; row < 3; row++)
    plane.set([turn[row][0] * scale, turn[row][1] * scale, origin[row] * scale], 3 * row);
  return { focalPx: 3000, centrePx: { x: 2000, y: 1500 }, k1: 0.02, k2: -0.01, plane };
}

function pixelOf(at: readonly number[]) {
  const [x, y, z] = seen(at);
  const r2 = (x / z) ** 2 + (y / z) ** 2;
  const stretch = 3000 * (1 + 0.02 * r2 - 0.01 * r2 * r2);
  return { x: 2000 + (stretch * x) / z, y: 1500 + (stretch * y) / z };
}

describe('a blank that does not stand in the marks’ plane', () => {
  test.each([0.03, -0.05, 0.4])('%f m nearer to the camera is read where it is', (nearerM) => {
    for (const scale of [1, 0.37]) {
      const over = cameraOverPlane(camera(scale), nearerM);
      const at = cameraBackProject(over, pixelOf([1.9, 0.8, -nearerM]));
      expect(at.x).toBeCloseTo(1.9, 9);
      expect(at.y).toBeCloseTo(0.8, 9);
    }
  });
  test('read as if it did, it is too large by s/(D − s) about the camera’s foot', () => {
    const at = cameraBackProject(camera(1), pixelOf([1.9, 0.8, -0.03]));
    expect(at.x - 0.7).toBeCloseTo((1.9 - 0.7) * (1 + 0.03 / (away - 0.03)), 9);
  });
  test('the camera’s distance is found', () => {
    for (const scale of [1, 5]) expect(cameraAwayM(camera(scale))).toBeCloseTo(away, 9);
  });
});
