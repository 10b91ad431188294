/** A traced curve that makes no sense, named at its field. */
import type { Checking } from './checking.ts';
import { arcFromTip } from './curve-places.ts';
import type { FitCurve, FitCurveSetup, FitLine } from './request.ts';

export function checkCurve(setup: FitCurveSetup, lengthM: number, path: string, check: Checking): void {
  const { clampFromTipM = lengthM, clampSigmaM = 0, turnedRad = 0, tests } = setup;
  check.range(`${path}.clampFromTipM`, clampFromTipM, { low: 0.05, high: lengthM * 1.0001, unit: 'm' });
  check.range(`${path}.clampSigmaM`, clampSigmaM, { low: 0, high: 1, unit: 'm' });
  check.range(`${path}.turnedRad`, turnedRad, { low: -100, high: 100, unit: 'rad' });
  tests.forEach((curve, t) => {
    checkPoints(curve, clampFromTipM, `${path}.tests[${t}]`, check);
    checkLoad(curve, clampFromTipM, `${path}.tests[${t}]`, check);
  });
}

function checkPoints({ points }: FitCurve, clampFromTipM: number, at: string, check: Checking): void {
  const finite = points.every(({ xM, yM }) => Number.isFinite(xM) && Number.isFinite(yM));
  const many = points.length >= 8 && finite;
  check.refuse(many, `${at}.points`, 'fit/few-points', { points: points.length });
  if (!many) return;
  const [lengthM] = arcFromTip(points);
  const fits = lengthM > 0.4 * clampFromTipM && lengthM < 1.25 * clampFromTipM;
  check.refuse(fits, `${at}.points`, 'fit/curve-length', { curveM: lengthM, blankM: clampFromTipM });
}

function checkLoad(curve: FitCurve, clampFromTipM: number, at: string, check: Checking): void {
  const { hung = [], masses = [], line, localSigmaM, driftSigmaM, levelSigmaRad } = curve;
  const mass = (list: 'hung' | 'masses') => (entry: { fromTipM: number; massKg: number }, i: number) => {
    const { fromTipM, massKg } = entry;
    check.range(`${at}.${list}[${i}].fromTipM`, fromTipM, { low: 0, high: clampFromTipM, unit: 'm' });
    check.range(`${at}.${list}[${i}].massKg`, massKg, { low: 0, high: 20, unit: 'kg' });
  };
  hung.forEach(mass('hung'));
  masses.forEach(mass('masses'));
  const spread = (value: number | undefined, name: string, high: number) => {
    if (value !== undefined) check.range(`${at}.${name}`, value, { over: 0, high });
  };
  spread(localSigmaM, 'localSigmaM', 0.1);
  spread(driftSigmaM, 'driftSigmaM', 0.5);
  spread(levelSigmaRad, 'levelSigmaRad', 0.5);
  if (line) checkLine(line, clampFromTipM, `${at}.line`, check);
}

function checkLine({ rings, tensionN }: FitLine, clampFromTipM: number, at: string, check: Checking): void {
  check.range(`${at}.tensionN`, tensionN, { low: 0, high: 500, unit: 'N' });
  const climbs = rings.every(
    ({ fromTipM }, i) => fromTipM >= (i === 0 ? 0 : rings[i - 1].fromTipM + 1e-3) && fromTipM < clampFromTipM,
  );
  check.refuse(rings.length > 0 && rings[0].fromTipM === 0 && climbs, `${at}.rings`, 'fit/rings', {});
}
