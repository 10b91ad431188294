import { type Finding, inputFound } from '../finding.ts';
import type { RotationRequest } from './request.ts';
import { rotationFound } from './rotation-kinds.ts';

/** Input that makes no sense, named at its field. */
export function checkRotation({ loadsKg, readings, sigmaM }: RotationRequest): Finding[] {
  const findings: Finding[] = [];
  loadsKg.forEach((kg, i) => {
    if (!(kg >= 0 && kg <= 50)) {
      const range = { value: kg, unit: 'kg', low: 0, high: 50 };
      findings.push(inputFound(`loadsKg[${i}]`, 'input/out-of-range', range));
    }
  });
  if (loadsKg[0] === loadsKg[1]) {
    findings.push(rotationFound('loadsKg', 'rotation/loads-equal', { massKg: loadsKg[0] }));
  }
  if (!(sigmaM > 0 && sigmaM <= 0.1)) {
    const range = { value: sigmaM, unit: 'm', over: 0, high: 0.1 };
    findings.push(inputFound('sigmaM', 'input/out-of-range', range));
  }
  readings.forEach(({ turnRad, dropsM }, i) => {
    if (!Number.isFinite(turnRad)) {
      const range = { value: turnRad, unit: 'rad', low: 0, high: 2 * Math.PI };
      findings.push(inputFound(`readings[${i}].turnRad`, 'input/out-of-range', range));
    }
    dropsM.forEach((drop, k) => {
      if (!(Math.abs(drop) <= 5)) {
        const range = { value: drop, unit: 'm', low: -5, high: 5 };
        findings.push(inputFound(`readings[${i}].dropsM[${k}]`, 'input/out-of-range', range));
      }
    });
  });
  const directions = distinctDirections(readings);
  if (findings.length === 0 && directions < 3) {
    findings.push(rotationFound('readings', 'rotation/few-directions', { directions }));
  }
  return findings;
}

/** Turns that differ by more than 10°, opposite ones counted once. */
function distinctDirections(readings: RotationRequest['readings']): number {
  const kept: number[] = [];
  for (const { turnRad } of readings) {
    if (kept.every((other) => Math.abs(Math.sin(turnRad - other)) > 0.17)) kept.push(turnRad);
  }
  return kept.length;
}
