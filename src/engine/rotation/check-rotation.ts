import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import type { RotationRequest } from './request.ts';

/** Input that makes no sense, named at its field. */
export function checkRotation({ loadsKg, readings, sigmaM }: RotationRequest): Finding[] {
  const findings: Finding[] = [];
  loadsKg.forEach((kg, i) => {
    if (!(kg >= 0 && kg <= 50)) {
      findings.push(said(`loadsKg[${i}]`, `${kg} kg is no test weight; grams as kilograms? give 0 to 50 kg`));
    }
  });
  if (loadsKg[0] === loadsKg[1]) {
    findings.push(said('loadsKg', `both loads are ${loadsKg[0]} kg; read two that differ`));
  }
  if (!(sigmaM > 0 && sigmaM <= 0.1)) {
    findings.push(said('sigmaM', `${sigmaM} m is no ± of a reading; give more than 0, up to 0.1 m`));
  }
  readings.forEach(({ turnRad, dropsM }, i) => {
    if (!Number.isFinite(turnRad)) {
      findings.push(said(`readings[${i}].turnRad`, `${turnRad} is no angle; give radians`));
    }
    dropsM.forEach((drop, k) => {
      if (!(Math.abs(drop) <= 5)) {
        findings.push(
          said(`readings[${i}].dropsM[${k}]`, `${drop} m is no drop of a section; millimetres as metres?`),
        );
      }
    });
  });
  if (findings.length === 0 && distinctDirections(readings) < 3) {
    findings.push(
      said(
        'readings',
        `${readings.length} readings in ${distinctDirections(readings)} directions cannot tell bow from stiffness; read 0, 45, 90 and 135° at least, or 8 steps over a whole turn`,
      ),
    );
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
