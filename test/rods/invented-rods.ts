/**
 * Invented rods for tests. Magnitudes are common practice, no source: a 9 ft blank for a number 5 line has
 * an EI of 20-25 N·m² at the butt and about 0.05 at the tip, 1.5-1.8 mm tip and 8-10 mm butt diameter; what
 * drops the tip by a third of the length is about 85 g for number 4, 100 g for number 5, 157 g for number 8,
 * and the tip then points 59-70° down.
 */
import type { Rod } from '../../src/engine/bend/rod.ts';
import { seededRandom } from '../../src/engine/numerics/seeded-random.ts';

export const inchM = 0.0254;

export interface SmoothBlank {
  /** Whole blank, and the part behind the front of the grip. */
  lengthM: number;
  handleM: number;
  tipEINm2: number;
  buttEINm2: number;
  tipDiameterM: number;
  buttDiameterM: number;
  tipKgPerM: number;
  buttKgPerM: number;
}

export const nineFootFive: SmoothBlank = {
  lengthM: 108 * inchM,
  handleM: 0.25,
  tipEINm2: 0.048,
  buttEINm2: 22.4,
  tipDiameterM: 1.65e-3,
  buttDiameterM: 9e-3,
  tipKgPerM: 0.0025,
  buttKgPerM: 0.026,
};
export const sevenSixFour: SmoothBlank = {
  lengthM: 90 * inchM,
  handleM: 0.23,
  tipEINm2: 0.03,
  buttEINm2: 14.4,
  tipDiameterM: 1.55e-3,
  buttDiameterM: 7.3e-3,
  tipKgPerM: 0.0022,
  buttKgPerM: 0.022,
};
export const nineFootEight: SmoothBlank = {
  lengthM: 108 * inchM,
  handleM: 0.27,
  tipEINm2: 0.08,
  buttEINm2: 34.7,
  tipDiameterM: 2.0e-3,
  buttDiameterM: 10.9e-3,
  tipKgPerM: 0.0035,
  buttKgPerM: 0.036,
};

/** The rod in front of the grip: diameter linear, EI a power of it that meets both ends. */
export function smoothRod(blank: SmoothBlank, rows = 100): Rod {
  const power =
    Math.log(blank.buttEINm2 / blank.tipEINm2) / Math.log(blank.buttDiameterM / blank.tipDiameterM);
  const lengthM = blank.lengthM - blank.handleM;
  const share = (fromTipM: number) => fromTipM / blank.lengthM;
  const stations = Array.from({ length: rows + 1 }, (_, i) => (lengthM * i) / rows);
  return {
    lengthM,
    stiffness: stations.map((fromTipM) => ({
      fromTipM,
      EINm2: blank.tipEINm2 * (1 + (blank.buttDiameterM / blank.tipDiameterM - 1) * share(fromTipM)) ** power,
    })),
    massPerLength: stations.map((fromTipM) => ({
      fromTipM,
      kgPerM: blank.tipKgPerM + (blank.buttKgPerM - blank.tipKgPerM) * share(fromTipM) ** 1.3,
    })),
  };
}

/** A smooth blank with a soft zone, stiff ferrules at the quarters and slow waves, from a seed. */
export function irregularRod(blank: SmoothBlank, seed: number, strength = 1): Rod {
  const random = seededRandom(seed);
  const rod = smoothRod(blank, 240);
  const softAt = (0.2 + 0.45 * random()) * rod.lengthM;
  const softWide = (0.08 + 0.08 * random()) * rod.lengthM;
  const softDepth = strength * (0.5 + 0.5 * random());
  const waves = [1, 2, 3].map((n) => ({
    n,
    size: strength * 0.15 * (random() - 0.5),
    phase: 6.28 * random(),
  }));
  const ferrules = [0.25, 0.5, 0.75].map((at) => at * blank.lengthM);
  const ferruleStiff = strength * (0.3 + 0.5 * random());
  const logChange = (s: number) =>
    -softDepth * Math.exp(-(((s - softAt) / softWide) ** 2)) +
    waves.reduce((sum, w) => sum + w.size * Math.sin((6.28 * w.n * s) / rod.lengthM + w.phase), 0) +
    ferrules.reduce((sum, at) => sum + ferruleStiff * Math.exp(-(((s - at) / 0.03) ** 2)), 0);
  return {
    ...rod,
    stiffness: rod.stiffness.map(({ fromTipM, EINm2 }) => ({
      fromTipM,
      EINm2: EINm2 * Math.exp(logChange(fromTipM)),
    })),
  };
}

/** Guide hardware as common practice, no source: small and light at the tip, a ringed stripping guide. */
export function flyGuides(count: number) {
  const share = (i: number) => i / Math.max(1, count - 1);
  return {
    guides: {
      count,
      ringHeightsM: Array.from({ length: count }, (_, i) => 0.004 + 0.008 * share(i)),
      massesKg: Array.from({ length: count }, (_, i) => 1e-4 + 8e-4 * share(i)),
      side: 'under' as const,
    },
    tipTop: { ringHeightM: 0.003, massKg: 2e-4 },
    reel: { alongM: -0.1, offsetM: 0.06 },
  };
}
