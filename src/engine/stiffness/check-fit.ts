/** Input that makes no sense, named at its field; an empty list means that a fit can be tried. */

import type { Finding } from '../finding.ts';
import { checkCurve } from './check-curve.ts';
import { type Checking, checking } from './checking.ts';
import type { FitBlank, FitClampSetup, FitRequest, FitSpanSetup } from './request.ts';

export function checkFit({ blank, setups }: FitRequest): Finding[] {
  const check = checking();
  checkBlank(blank, check);
  setups.forEach((setup, s) => {
    const path = `setups[${s}]`;
    if (setup.kind === 'span') checkSpan(setup, blank.lengthM, path, check);
    else if (setup.kind === 'curve') checkCurve(setup, blank.lengthM, path, check);
    else checkClamp(setup, blank.lengthM, path, check);
  });
  return check.findings;
}

function within(value: number, low: number, high: number): boolean {
  return Number.isFinite(value) && value >= low && value <= high;
}

function checkBlank(blank: FitBlank, check: Checking): void {
  const { lengthM, massKg, sweepSigmaPerM } = blank;
  check.range('blank.lengthM', lengthM, { low: 0.2, high: 12, unit: 'm' });
  let before = Number.NEGATIVE_INFINITY;
  blank.diameters?.forEach(({ fromTipM, outsideM }, i) => {
    const path = `blank.diameters[${i}]`;
    check.range(`${path}.fromTipM`, fromTipM, { low: 0, high: lengthM * 1.001, unit: 'm' });
    check.refuse(fromTipM > before, `${path}.fromTipM`, 'fit/not-after', { fromTipM, beforeM: before });
    check.range(`${path}.outsideM`, outsideM, { low: 3e-4, high: 0.06, unit: 'm' });
    before = fromTipM;
  });
  blank.swings?.forEach(({ clampFromTipM = lengthM, hz, sigmaHz }, i) => {
    const path = `blank.swings[${i}]`;
    check.range(`${path}.clampFromTipM`, clampFromTipM, { low: 0.1, high: lengthM * 1.001, unit: 'm' });
    check.range(`${path}.hz`, hz, { low: 0.05, high: 100, unit: 'Hz' });
    check.range(`${path}.sigmaHz`, sigmaHz, { over: 0, high: hz, unit: 'Hz' });
  });
  if (massKg !== undefined) check.range('blank.massKg', massKg, { low: 5e-4, high: 5, unit: 'kg' });
  if (sweepSigmaPerM !== undefined)
    check.range('blank.sweepSigmaPerM', sweepSigmaPerM, { low: 0, high: 2, unit: '1/m' });
  blank.sections?.forEach(({ fromTipM, toTipM, massKg: kg, balanceFromTipM }, i) => {
    const path = `blank.sections[${i}]`;
    const onBlank = within(fromTipM, 0, lengthM) && within(toTipM, 0, lengthM * 1.001);
    const values = { fromM: fromTipM, toM: toTipM, lengthM };
    check.refuse(onBlank && toTipM > fromTipM, path, 'fit/ends-order', values);
    if (kg !== undefined) check.range(`${path}.massKg`, kg, { low: 1e-4, high: 5, unit: 'kg' });
    if (balanceFromTipM !== undefined)
      check.range(`${path}.balanceFromTipM`, balanceFromTipM, { low: fromTipM, high: toTipM, unit: 'm' });
  });
  blank.stiffZones?.forEach(({ fromTipM, toTipM, ratio }, i) => {
    const path = `blank.stiffZones[${i}]`;
    const onBlank = within(fromTipM, 0, lengthM) && within(toTipM, 0, lengthM);
    const values = { fromM: fromTipM, toM: toTipM, lengthM };
    check.refuse(onBlank && toTipM > fromTipM, path, 'fit/ends-order', values);
    if (ratio !== undefined) check.range(`${path}.ratio`, ratio, { low: 0.1, high: 20 });
  });
}

function checkClamp(setup: FitClampSetup, lengthM: number, path: string, check: Checking): void {
  const { nominalAngleRad, tiltSigmaRad = 0.02, clampFromTipM = lengthM, turnedRad = 0 } = setup;
  check.range(`${path}.nominalAngleRad`, nominalAngleRad, { low: -10, high: 10, unit: 'rad' });
  check.range(`${path}.tiltSigmaRad`, tiltSigmaRad, { low: 0, high: 1, unit: 'rad' });
  check.range(`${path}.clampFromTipM`, clampFromTipM, { low: 0.05, high: lengthM * 1.0001, unit: 'm' });
  check.range(`${path}.turnedRad`, turnedRad, { low: -100, high: 100, unit: 'rad' });
  setup.flagChecks?.forEach(({ fromTipM, fromClampM }, i) => {
    const at = `${path}.flagChecks[${i}]`;
    for (const [field, value] of Object.entries({ fromTipM, fromClampM })) {
      check.range(`${at}.${field}`, value, { low: 0, high: clampFromTipM, unit: 'm' });
    }
  });
  setup.tests.forEach(({ hung = [], readings, sigmaM = 0.002 }, t) => {
    const at = `${path}.tests[${t}]`;
    check.range(`${at}.sigmaM`, sigmaM, { low: 1e-6, high: 0.5, unit: 'm' });
    hung.forEach(({ fromTipM, massKg }, h) => {
      check.range(`${at}.hung[${h}].fromTipM`, fromTipM, { low: 0, high: lengthM, unit: 'm' });
      check.range(`${at}.hung[${h}].massKg`, massKg, { low: 0, high: 20, unit: 'kg' });
    });
    readings.forEach(({ fromTipM, dropM }, r) => {
      check.range(`${at}.readings[${r}].fromTipM`, fromTipM, { low: 0, high: lengthM, unit: 'm' });
      check.range(`${at}.readings[${r}].dropM`, dropM, { unit: 'm' });
    });
  });
}

function checkSpan(setup: FitSpanSetup, lengthM: number, path: string, check: Checking): void {
  const [a, b] = setup.supportsFromTipM;
  const { loadFromTipM, turnedRad = 0 } = setup;
  const apart = within(a, 0, lengthM) && within(b, 0, lengthM) && Math.abs(a - b) > 0.02;
  check.refuse(apart, `${path}.supportsFromTipM`, 'fit/supports', { tipSideM: a, buttSideM: b });
  check.range(`${path}.loadFromTipM`, loadFromTipM, { low: 0, high: lengthM, unit: 'm' });
  check.range(`${path}.turnedRad`, turnedRad, { low: -100, high: 100, unit: 'rad' });
  setup.tests.forEach(({ massKg, sagM, sigmaM = 0.002 }, t) => {
    const at = `${path}.tests[${t}]`;
    check.range(`${at}.massKg`, massKg, { low: 0, high: 50, unit: 'kg' });
    check.range(`${at}.sagM`, sagM, { low: -10, high: 10, unit: 'm' });
    check.range(`${at}.sigmaM`, sigmaM, { low: 1e-6, high: 0.5, unit: 'm' });
  });
}
