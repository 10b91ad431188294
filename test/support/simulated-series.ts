/** Invented blanks of one series: one drawn at random, and others that differ from it in level, tilt and waves. */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { randomBlank, type SetupPlan, type TrueBlank } from './simulated-bench.ts';

/** Standard deviations of ln EI: how far makers keep a series together is not known; these are invented. */
export interface SeriesSpread {
  level: number;
  tilt: number;
  wave: number;
}
export const commonSpread: SeriesSpread = { level: 0.06, tilt: 0.05, wave: 0.03 };

export function randomSeries(seed: number, count: number, spread: SeriesSpread = commonSpread): TrueBlank[] {
  const base = randomBlank(seed, { sweepSigmaPerM: 0 });
  const random = seededRandom(seed + 5000);
  const normal = seededNormal(random);
  return Array.from({ length: count }, () => {
    const [level, tilt] = [spread.level * normal(), spread.tilt * normal()];
    const waves = Array.from({ length: 3 }, (_, k) => ({
      amplitude: spread.wave * normal(),
      perLength: 0.8 + 1.4 * k,
      phase: 2 * Math.PI * random(),
    }));
    const stiffnessNm2 = (s: number) => {
      let log = level + tilt * ((2 * s) / base.lengthM - 1);
      for (const { amplitude, perLength, phase } of waves)
        log += amplitude * Math.sin((2 * Math.PI * perLength * s) / base.lengthM + phase);
      return base.stiffnessNm2(s) * Math.exp(log);
    };
    return { ...base, stiffnessNm2 };
  });
}

/** Half of what `fullPlan` reads: every other flag, the same weights. */
export function halfPlan(sigmaM: number): SetupPlan[] {
  const stationsM = [0, 12, 34, 64].map((inches) => inches * 0.0254);
  return [{ stationsM, hungKg: [0, 0.03, 0.08, 0.16], sigmaM }];
}
