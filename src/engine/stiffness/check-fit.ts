/** Input that makes no sense, named at its field; an empty list means that a fit can be tried. */

import type { Finding, Require } from '../finding.ts';
import { said } from '../finding.ts';
import { checkCurve } from './check-curve.ts';
import type { FitBlank, FitClampSetup, FitRequest, FitSpanSetup } from './request.ts';

export function checkFit({ blank, setups }: FitRequest): Finding[] {
  const findings: Finding[] = [];
  const require = (holds: boolean, path: string, message: string) => {
    if (!holds) findings.push(said(path, message));
  };
  checkBlank(blank, require);
  setups.forEach((setup, s) => {
    const path = `setups[${s}]`;
    if (setup.kind === 'span') checkSpan(setup, blank.lengthM, path, require);
    else if (setup.kind === 'curve') checkCurve(setup, blank.lengthM, path, require);
    else checkClamp(setup, blank.lengthM, path, require);
  });
  return findings;
}

export function within(value: number, low: number, high: number): boolean {
  return Number.isFinite(value) && value >= low && value <= high;
}

function checkBlank(blank: FitBlank, require: Require): void {
  const { lengthM, massKg, sweepSigmaPerM } = blank;
  require(within(
    lengthM,
    0.2,
    12,
  ), 'blank.lengthM', `${lengthM} m is no length of a blank; give 0.2 to 12 m`);
  let before = Number.NEGATIVE_INFINITY;
  blank.diameters?.forEach(({ fromTipM, outsideM }, i) => {
    const path = `blank.diameters[${i}]`;
    require(within(
      fromTipM,
      0,
      lengthM * 1.001,
    ), `${path}.fromTipM`, `${fromTipM} m is not on the blank; give 0 to ${lengthM} m`);
    require(fromTipM >
      before, `${path}.fromTipM`, `${fromTipM} m does not follow ${before} m; list each station once, from the tip down`);
    require(within(
      outsideM,
      3e-4,
      0.06,
    ), `${path}.outsideM`, `${outsideM} m is no diameter of a blank; give 0.0003 to 0.06 m`);
    before = fromTipM;
  });
  blank.swings?.forEach(({ clampFromTipM = lengthM, hz, sigmaHz }, i) => {
    const path = `blank.swings[${i}]`;
    require(within(
      clampFromTipM,
      0.1,
      lengthM * 1.001,
    ), `${path}.clampFromTipM`, `${clampFromTipM} m is no hold on the blank; give 0.1 to ${lengthM} m`);
    require(within(hz, 0.05, 100), `${path}.hz`, `${hz} Hz is no swing of a blank; give 0.05 to 100 Hz`);
    require(sigmaHz > 0 &&
      sigmaHz <
        hz, `${path}.sigmaHz`, `${sigmaHz} Hz is no ± of ${hz} Hz; give more than 0, less than the frequency`);
  });
  if (massKg !== undefined)
    require(within(
      massKg,
      5e-4,
      5,
    ), 'blank.massKg', `${massKg} kg is no mass of a blank; grams as kilograms? give 0.0005 to 5 kg`);
  if (sweepSigmaPerM !== undefined)
    require(within(
      sweepSigmaPerM,
      0,
      2,
    ), 'blank.sweepSigmaPerM', `${sweepSigmaPerM} 1/m is out of range; give 0 to 2`);
  blank.sections?.forEach(({ fromTipM, toTipM, massKg: kg, balanceFromTipM }, i) => {
    const path = `blank.sections[${i}]`;
    require(within(fromTipM, 0, lengthM) &&
      within(toTipM, 0, lengthM * 1.001) &&
      toTipM >
        fromTipM, path, `a section from ${fromTipM} to ${toTipM} m does not lie on the blank; give two stations of 0 to ${lengthM} m in order`);
    if (kg !== undefined)
      require(within(kg, 1e-4, 5), `${path}.massKg`, `${kg} kg is no mass of a section; give 0.0001 to 5 kg`);
    if (balanceFromTipM !== undefined)
      require(within(
        balanceFromTipM,
        fromTipM,
        toTipM,
      ), `${path}.balanceFromTipM`, `${balanceFromTipM} m is not on the section; measure from the blank's tip`);
  });
  blank.stiffZones?.forEach(({ fromTipM, toTipM, ratio }, i) => {
    const path = `blank.stiffZones[${i}]`;
    require(within(fromTipM, 0, lengthM) &&
      within(toTipM, 0, lengthM) &&
      toTipM > fromTipM, path, `a zone from ${fromTipM} to ${toTipM} m does not lie on the blank`);
    if (ratio !== undefined)
      require(within(ratio, 0.1, 20), `${path}.ratio`, `${ratio} is no ratio of stiffness; give 0.1 to 20`);
  });
}

function checkClamp(setup: FitClampSetup, lengthM: number, path: string, require: Require): void {
  const { nominalAngleRad, tiltSigmaRad = 0.02, clampFromTipM = lengthM, turnedRad = 0 } = setup;
  require(within(
    nominalAngleRad,
    -10,
    10,
  ), `${path}.nominalAngleRad`, `${nominalAngleRad} rad is no angle of a clamp`);
  require(within(
    tiltSigmaRad,
    0,
    1,
  ), `${path}.tiltSigmaRad`, `${tiltSigmaRad} rad is out of range; give 0 to 1 (1° is 0.0175)`);
  require(within(
    clampFromTipM,
    0.05,
    lengthM * 1.0001,
  ), `${path}.clampFromTipM`, `${clampFromTipM} m is not on the blank; give 0.05 to ${lengthM} m`);
  require(within(turnedRad, -100, 100), `${path}.turnedRad`, `${turnedRad} rad is no rotation`);
  setup.flagChecks?.forEach(({ fromTipM, fromClampM }, i) => {
    const at = `${path}.flagChecks[${i}]`;
    for (const [field, value] of Object.entries({ fromTipM, fromClampM })) {
      require(within(
        value,
        0,
        clampFromTipM,
      ), `${at}.${field}`, `${value} m does not lie in front of the clamp; give 0 to ${clampFromTipM} m`);
    }
  });
  setup.tests.forEach(({ hung = [], readings, sigmaM = 0.002 }, t) => {
    const at = `${path}.tests[${t}]`;
    require(within(
      sigmaM,
      1e-6,
      0.5,
    ), `${at}.sigmaM`, `${sigmaM} m is no ± of a reading; give 0.000001 to 0.5 m`);
    hung.forEach(({ fromTipM, massKg }, h) => {
      require(within(
        fromTipM,
        0,
        lengthM,
      ), `${at}.hung[${h}].fromTipM`, `${fromTipM} m is not on the blank; give 0 to ${lengthM} m`);
      require(within(
        massKg,
        0,
        20,
      ), `${at}.hung[${h}].massKg`, `${massKg} kg is no test weight; grams as kilograms? give 0 to 20 kg`);
    });
    readings.forEach(({ fromTipM, dropM }, r) => {
      require(within(
        fromTipM,
        0,
        lengthM,
      ), `${at}.readings[${r}].fromTipM`, `${fromTipM} m is not on the blank; give 0 to ${lengthM} m`);
      require(Number.isFinite(dropM), `${at}.readings[${r}].dropM`, `${dropM} is no drop; give metres`);
    });
  });
}

function checkSpan(setup: FitSpanSetup, lengthM: number, path: string, require: Require): void {
  const [a, b] = setup.supportsFromTipM;
  const { loadFromTipM, turnedRad = 0 } = setup;
  require(within(a, 0, lengthM) &&
    within(b, 0, lengthM) &&
    Math.abs(a - b) >
      0.02, `${path}.supportsFromTipM`, `supports at ${a} and ${b} m; give two places on the blank at least 0.02 m apart`);
  require(within(
    loadFromTipM,
    0,
    lengthM,
  ), `${path}.loadFromTipM`, `${loadFromTipM} m is not on the blank; give 0 to ${lengthM} m`);
  require(within(turnedRad, -100, 100), `${path}.turnedRad`, `${turnedRad} rad is no rotation`);
  setup.tests.forEach(({ massKg, sagM, sigmaM = 0.002 }, t) => {
    const at = `${path}.tests[${t}]`;
    require(within(
      massKg,
      0,
      50,
    ), `${at}.massKg`, `${massKg} kg is no test weight; grams as kilograms? give 0 to 50 kg`);
    require(within(sagM, -10, 10), `${at}.sagM`, `${sagM} m is no sag; millimetres as metres?`);
    require(within(
      sigmaM,
      1e-6,
      0.5,
    ), `${at}.sigmaM`, `${sigmaM} m is no ± of a reading; give 0.000001 to 0.5 m`);
  });
}
