import { expect, test } from 'vitest';
import { leastSightedM, sightSpindle } from './sighting.ts';
import { axisMeetsFromTipM } from './spool.ts';

const radiusAt = (fromButtM: number) => 0.006 - 0.0015 * fromButtM;
/** Heights over the surface of a straight line that leaves the lip 60 mm off the axis, 0.31 m from the butt, 3° down. */
const tiltRad = (3 * Math.PI) / 180;
const overBlankM = (at: number) => 0.06 - (at - 0.31) * Math.tan(tiltRad) - radiusAt(at);

test('two heights over a tapering blank give back the tilt and the place off the axis', () => {
  const [near, far] = [0.45, 0.9].map((fromButtM) => ({ fromButtM, overBlankM: overBlankM(fromButtM) }));
  const sighted = sightSpindle(near, far, radiusAt);
  expect(sighted?.tiltRad).toBeCloseTo(tiltRad, 12);
  expect(sighted?.offAxisM(0.31)).toBeCloseTo(0.06, 12);
});

test('where it meets the blank: a trade’s figure of 0.82 to 1.05 m at 45 to 60 mm and 3 to 4° (common practice, no source)', () => {
  const meets = (offsetM: number, degrees: number) => {
    const spool = { lipDiameterM: 0.04, alongM: 0, offsetM, tiltRad: (degrees * Math.PI) / 180 };
    return 3 - (axisMeetsFromTipM(spool, 3) ?? Number.NaN);
  };
  expect(meets(0.0575, 4)).toBeCloseTo(0.82, 2);
  expect(meets(0.055, 3)).toBeCloseTo(1.05, 2);
});

test('a millimetre in each reading is an eighth of a degree over 0.9 m', () => {
  const [near, far] = [0.4, 1.3].map((fromButtM) => ({ fromButtM, overBlankM: overBlankM(fromButtM) }));
  const off = sightSpindle(
    { ...near, overBlankM: near.overBlankM + 0.001 },
    { ...far, overBlankM: far.overBlankM - 0.001 },
    radiusAt,
  );
  const sigmaRad = sightSpindle(near, far, radiusAt)?.tiltSigmaRad ?? 0;
  expect((off?.tiltRad ?? 0) - tiltRad).toBeCloseTo(sigmaRad, 4);
  expect((sigmaRad * 180) / Math.PI).toBeCloseTo(0.127, 3);
});

test('two places that are too near, or the wrong way about, say nothing', () => {
  const at = (fromButtM: number) => ({ fromButtM, overBlankM: 0.05 });
  expect(sightSpindle(at(0.5), at(0.5 + leastSightedM / 2), radiusAt)).toBeUndefined();
  expect(sightSpindle(at(0.9), at(0.5), radiusAt)).toBeUndefined();
});
