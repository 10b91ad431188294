import { expect, test } from 'vitest';
import type { RotationSolved } from '../engine/rotation/request.ts';
import { bowInWords, degrees, stiffnessInWords } from './turning.ts';
import { shopWriter } from './writer.ts';

const mm = shopWriter({ system: 'mm' });

const solved: RotationSolved = {
  status: 'converged',
  bow: { amplitudeM: 0.0041, directionRad: -1.3, sigmaM: 0.0001, directionSigmaRad: 0.02 },
  stiffnessDifference: { fraction: 0.06, softRad: 2.2, sigma: 0.002, softSigmaRad: 0.03 },
  significant: { bow: true, stiffness: true },
  residualRmsM: 1e-4,
  findings: [],
};

test('a bow is said as what is seen on the bench, with its 95 % ±', () => {
  expect(bowInWords(solved, 'clamp', mm)).toBe('Natural bow: the tip leans 4.1 mm ±0.2 mm toward 286° ±2°.');
  expect(bowInWords(solved, 'span', mm)).toMatch(/the middle stands out/);
});

test('a stiffness difference names both soft sides', () => {
  expect(stiffnessInWords(solved)).toBe(
    'Stiffness difference: 6.0 % ±0.4 %, softest with 126° or 306° down, ±3°.',
  );
  const atZero = {
    ...solved,
    stiffnessDifference: { ...solved.stiffnessDifference, softRad: Math.PI - 1e-4 },
  };
  expect(stiffnessInWords(atZero)).toMatch(/with 0° or 180° down/);
});

test('what can be chance is called so, with what may still be there', () => {
  const chance = { ...solved, significant: { bow: false, stiffness: false } };
  expect(bowInWords(chance, 'clamp', mm)).toBe('No bow found (less than 4.3 mm).');
  expect(stiffnessInWords(chance)).toBe('No spine found (less than 6.4 %).');
});

test('angles are counted as the collar is numbered', () => {
  expect([-0.1, 0, 6.2831].map(degrees)).toEqual(['354°', '0°', '0°']);
});
