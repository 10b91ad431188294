/** What a builder knows of an invented blank before he takes its pictures, and the weight he begins with. */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitBlank } from '../../src/engine/stiffness/request.ts';
import { type TrueBlank, trueCurve } from './simulated-bench.ts';

/** What hangs at the tip lowers it by so much of the length. */
export function weightFor(blank: TrueBlank, share: number): number {
  let [low, high] = [0, 2];
  for (let i = 0; i < 30; i++) {
    const middle = Math.sqrt(Math.max(1e-6, low * high)) || 0.5 * (low + high);
    const curve = trueCurve(blank, {
      buttAngleRad: 0,
      clampFromTipM: blank.lengthM,
      turnedRad: 0,
      hung: [{ fromTipM: 0, massKg: middle }],
    });
    if (-curve.yM[curve.yM.length - 1] < share * blank.lengthM) low = Math.max(middle, 1e-4);
    else high = middle;
  }
  return high;
}

export function fitBlankOf(blank: TrueBlank, seed: number): FitBlank {
  const normal = seededNormal(seededRandom(seed));
  const { lengthM } = blank;
  let massKg = 0;
  for (let k = 0; k < 400; k++) massKg += (blank.kgPerM(((k + 0.5) / 400) * lengthM) * lengthM) / 400;
  return {
    lengthM,
    diameters: Array.from({ length: 9 }, (_, i) => {
      const fromTipM = (i / 8) * lengthM;
      return { fromTipM, outsideM: blank.outsideM(fromTipM) + 3e-5 * normal() };
    }),
    massKg: Math.round(massKg * 1e5) / 1e5,
    stiffZones: blank.ferrules,
  };
}
