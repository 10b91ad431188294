/** Simulated stands of three pictures, and what goes wrong between the pictures. */
import { seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitCurveSetup } from '../../src/engine/stiffness/request.ts';
import { randomBlank, type TrueBlank } from './simulated-bench.ts';
import {
  commonStand,
  photographStand,
  type StandErrors,
  type StandPicture,
  type StandSlips,
} from './simulated-stand.ts';
import { weightFor } from './stand-blank.ts';

export type Mishap = 'none' | 'camera' | 'clamp' | 'weight' | 'swap' | 'level' | 'blank' | 'swing';
/** Any of them names it. */
export const mishapCodes: Record<Exclude<Mishap, 'none'>, readonly string[]> = {
  camera: ['stand/camera-moved'],
  clamp: ['stand/clamp-slipped'],
  weight: ['stand/weight-off'],
  swap: ['stand/weights-swapped'],
  level: ['stand/wall-unlevel'],
  blank: ['stand/other-blank'],
  swing: ['stand/still-swings', 'stand/tip-smeared'],
};

export const together = (setups: readonly FitCurveSetup[]): FitCurveSetup[] =>
  setups.map((setup) => ({ ...setup, shared: 'the wall' }));

/** A third of the blanks bowed, half with ferrules that are told; marks tapped once for every other stand. */
export function standOf(
  seed: number,
  index: number,
  errors: Partial<StandErrors> = {},
  slips?: StandSlips,
  odd: { picture: number } & Partial<StandPicture> = { picture: -1 },
) {
  const blank = randomBlank(seed, {
    sweepSigmaPerM: index % 3 === 0 ? 0.01 : 0,
    ferrules: index % 2 ? 0 : undefined,
  });
  const thirdKg = weightFor(blank, 1 / 3);
  const hungKg = [0, thirdKg, 2.2 * thirdKg];
  const all = { ...commonStand, unevenPx: 0.15, tappedOnce: index % 2 === 0, ...errors };
  const { picture, ...change } = odd;
  const pictures = hungKg.map((kg, i) => ({ ...(i === picture ? change : {}), hungKg: kg }));
  return { blank, thirdKg, hungKg, ...photographStand(blank, pictures, 7 * seed + 1, all, slips) };
}

/** Before the second or the third picture, up or down, of a size drawn evenly. */
export function withMishap(mishap: Mishap, seed: number, index: number) {
  const random = seededRandom(3 * seed + 1);
  const sign = random() < 0.5 ? -1 : 1;
  const from = 1 + Math.floor(2 * random());
  const [size, other] = [random(), random() - 0.5];
  const degree = Math.PI / 180;
  const slips: StandSlips = {
    ...(mishap === 'clamp' ? { clampSlipped: { from, byRad: sign * (0.5 + size) * degree } } : {}),
    ...(mishap === 'camera'
      ? {
          cameraMoved: {
            from,
            yawRad: sign * (0.003 + 0.01 * size),
            pitchRad: 0.01 * other,
            rollRad: 0.005 * other,
            stale: true,
          },
        }
      : {}),
  };
  const errors = mishap === 'level' ? { levelFixedRad: sign * (1.5 + 1.5 * size) * degree } : {};
  const odd = { picture: from, ...oddPicture(mishap, seed, random) };
  const { blank, hungKg, ...stand } = standOf(seed, index, errors, slips, odd);
  const stated = hungKg.slice();
  if (mishap === 'weight') stated[from] *= 1 + sign * (0.1 + 0.2 * size);
  if (mishap === 'swap') [stated[from - 1], stated[2]] = [stated[2], stated[from - 1]];
  const setups = together(stand.setups).map(
    (setup, i): FitCurveSetup => ({
      ...setup,
      tests: [{ ...setup.tests[0], hung: stated[i] > 0 ? [{ fromTipM: 0, massKg: stated[i] }] : [] }],
    }),
  );
  return { blank, setups, seed, odd };
}

/** Another blank as long to 5 mm each way; or in any picture a tip that swings 1 to 4 cm to each side,
 * seen for 1/30 to 1/15 s. */
function oddPicture(
  mishap: Mishap,
  seed: number,
  random: () => number,
): Partial<StandPicture & { picture: number }> {
  if (mishap === 'blank') {
    const { lengthM } = randomBlank(seed, { sweepSigmaPerM: 0 });
    const other = randomBlank(seed + 500_000, { sweepSigmaPerM: 0 });
    return { blank: asLong(other, lengthM + 0.01 * (random() - 0.5)) };
  }
  if (mishap !== 'swing') return {};
  const [amplitude, phase, exposure] = [random(), random(), random()];
  return {
    picture: Math.floor(3 * random()),
    swing: {
      amplitudeM: 0.01 + 0.03 * amplitude,
      phaseRad: 2 * Math.PI * phase,
      exposureS: (1 + exposure) / 30,
    },
  };
}

function asLong(blank: TrueBlank, lengthM: number): TrueBlank {
  const there = (fromTipM: number) => (fromTipM * blank.lengthM) / lengthM;
  const { stiffnessNm2, kgPerM, outsideM, restPerM, restAcrossPerM } = blank;
  return {
    ...blank,
    lengthM,
    stiffnessNm2: (s) => stiffnessNm2(there(s)),
    kgPerM: (s) => kgPerM(there(s)),
    outsideM: (s) => outsideM(there(s)),
    restPerM: (s) => restPerM(there(s)),
    restAcrossPerM: (s) => restAcrossPerM(there(s)),
  };
}
