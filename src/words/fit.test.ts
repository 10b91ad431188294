import { describe, expect, it } from 'vitest';
import type { FitSolved } from '../engine/stiffness/request.ts';
import { agreementWords, surenessWords, tiltWords } from './fit.ts';

const fitted = (halfWidth: number, residualRmsM = 0.001): FitSolved => ({
  status: 'converged',
  stiffness: [0, 1, 2].map((fromTipM) => ({
    fromTipM,
    EINm2: 2,
    lowNm2: 2 / (1 + halfWidth),
    highNm2: 2 * (1 + halfWidth),
  })),
  massPerLength: [],
  restCurvature: [],
  tiltRad: [],
  residualRmsM,
  findings: [],
  iterations: 5,
});

describe('what the fit says in words', () => {
  it('a tilt upwards lifts the tip by sin(tilt) times the free length', () => {
    expect(tiltWords(Math.PI / 180, 2, 'mm')).toBe(
      'pointed 1.0° up, which lifts the tip by 35 mm; this is taken out',
    );
    expect(tiltWords(-Math.PI / 180, 2, 'mm')).toMatch(/1\.0° down, which lowers/);
  });
  it('a tilt no level shows is not made much of', () => {
    expect(tiltWords(0.002, 2.5, 'mm')).toMatch(/stood level/);
  });
  it('a short start says that it is one', () => {
    expect(surenessWords(fitted(0.08), 23)).toBe('Stiffness is known to ±8 % along most of the blank.');
    expect(surenessWords(fitted(0.5), 5)).toMatch(/±50 %.*not yet for thread/);
  });
  it('a residual no tape makes asks for the slip', () => {
    expect(agreementWords(fitted(0.1, 0.0012))).toMatch(/1\.2 mm.*as good as/);
    expect(agreementWords(fitted(0.1, 0.012))).toMatch(/12\.0 mm.*Look for/);
  });
});
