import { describe, expect, it } from 'vitest';
import type { FitSolved } from '../engine/stiffness/request.ts';
import { agreementWords, clampsWords, surenessWords, tiltWords } from './fit.ts';
import { shopWriter } from './writer.ts';

const mm = shopWriter({ system: 'mm' });

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
  it('a tilt moves the tip by sin(tilt) times the free length', () => {
    expect(tiltWords(Math.PI / 180, 2, mm)).toBe('The clamp was 1° high (35 mm at the tip). Corrected.');
    expect(tiltWords(-Math.PI / 180, 2, mm)).toMatch(/1° low \(35 mm/);
  });
  it('a tilt no level shows is not made much of', () => {
    expect(tiltWords(0.002, 2.5, mm)).toBe('The clamp was level.');
    expect(clampsWords([0.002, 0.008, -0.008], mm)).toBe(
      'The clamps were off by 0°, 0.5°, -0.5°; corrected.',
    );
    expect(clampsWords([0.002, -0.003], mm)).toBe('The clamps were level.');
  });
  it('a short start says that it is one', () => {
    expect(surenessWords(fitted(0.08), 23)).toBe('Stiffness is known to ±8 % along most of the blank.');
    expect(surenessWords(fitted(0.5), 5)).toMatch(/±50 %.*enough for a first layout.*Readings says whether/);
  });
  it('a residual no tape makes asks for the slip', () => {
    expect(agreementWords(fitted(0.1, 0.0012), mm)).toMatch(/1\.2 mm\. Good/);
    expect(agreementWords(fitted(0.1, 0.012), mm)).toMatch(/Look for.*12 mm/);
  });
});
