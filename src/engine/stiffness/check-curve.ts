/** A traced curve that makes no sense, named at its field. */
import type { Require } from '../finding.ts';
import { arcFromTip } from './curve-places.ts';
import type { FitCurve, FitCurveSetup, FitLine } from './request.ts';

export function checkCurve(setup: FitCurveSetup, lengthM: number, path: string, require: Require): void {
  const { clampFromTipM = lengthM, turnedRad = 0, tests } = setup;
  require(clampFromTipM >= 0.05 &&
    clampFromTipM <=
      lengthM *
        1.0001, `${path}.clampFromTipM`, `${clampFromTipM} m is not on the blank; give 0.05 to ${lengthM} m`);
  const { clampSigmaM = 0 } = setup;
  require(clampSigmaM >= 0 &&
    clampSigmaM <= 1, `${path}.clampSigmaM`, `${clampSigmaM} m is no ± here; give 0 to 1 m`);
  require(Math.abs(turnedRad) <= 100, `${path}.turnedRad`, `${turnedRad} rad is no rotation`);
  tests.forEach((curve, t) => {
    checkPoints(curve, clampFromTipM, `${path}.tests[${t}]`, require);
    checkLoad(curve, clampFromTipM, `${path}.tests[${t}]`, require);
  });
}

function checkPoints({ points }: FitCurve, clampFromTipM: number, at: string, require: Require): void {
  const finite = points.every(({ xM, yM }) => Number.isFinite(xM) && Number.isFinite(yM));
  require(points.length >= 8 &&
    finite, `${at}.points`, `${points.length} points make no curve; give at least 8, in metres, from the hold to the tip`);
  if (points.length < 8 || !finite) return;
  const [lengthM] = arcFromTip(points);
  require(lengthM > 0.4 * clampFromTipM &&
    lengthM <
      1.25 *
        clampFromTipM, `${at}.points`, `the traced curve is ${lengthM.toFixed(3)} m long, the blank from hold to tip ${clampFromTipM.toFixed(3)} m: are the marks' distances right, and were butt and tip tapped?`);
}

function checkLoad(curve: FitCurve, clampFromTipM: number, at: string, require: Require): void {
  const { hung = [], masses = [], line, localSigmaM, driftSigmaM, levelSigmaRad } = curve;
  const mass = (list: 'hung' | 'masses') => (entry: { fromTipM: number; massKg: number }, i: number) => {
    const { fromTipM, massKg } = entry;
    require(fromTipM >= 0 &&
      fromTipM <=
        clampFromTipM, `${at}.${list}[${i}].fromTipM`, `${fromTipM} m is not in front of the hold; give 0 to ${clampFromTipM} m`);
    require(massKg >= 0 &&
      massKg <=
        20, `${at}.${list}[${i}].massKg`, `${massKg} kg is no test weight; grams as kilograms? give 0 to 20 kg`);
  };
  hung.forEach(mass('hung'));
  masses.forEach(mass('masses'));
  const spread = (value: number | undefined, name: string, most: number) =>
    require(value === undefined ||
      (value > 0 && value <= most), `${at}.${name}`, `${value} is no ± here; give more than 0 up to ${most}`);
  spread(localSigmaM, 'localSigmaM', 0.1);
  spread(driftSigmaM, 'driftSigmaM', 0.5);
  spread(levelSigmaRad, 'levelSigmaRad', 0.5);
  if (line) checkLine(line, clampFromTipM, `${at}.line`, require);
}

function checkLine({ rings, tensionN }: FitLine, clampFromTipM: number, at: string, require: Require): void {
  require(tensionN >= 0 &&
    tensionN <= 500, `${at}.tensionN`, `${tensionN} N is no tension of a line; give 0 to 500`);
  const climbs = rings.every(
    ({ fromTipM }, i) => fromTipM >= (i === 0 ? 0 : rings[i - 1].fromTipM + 1e-3) && fromTipM < clampFromTipM,
  );
  require(rings.length > 0 &&
    rings[0].fromTipM === 0 &&
    climbs, `${at}.rings`, 'give the tip-top at 0 first, then the rings towards the butt, each in front of the hold');
}
