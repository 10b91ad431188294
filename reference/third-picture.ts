/**
 * Which third picture of a stand tells most, after one with nothing and one with a weight hung: about twice the weight,
 * the weight that bends the blank as far with the hold moved up to half, the same weight with the blank turned half
 * over, or the same once more. Run by `npm run pictures -- --third N`; the numbers stand in docs/three-pictures.md.
 */
import { fit } from '../src/engine/stiffness/fit.ts';
import type { FitSolved } from '../src/engine/stiffness/request.ts';
import { judgeStiffness, type StiffnessJudgement } from '../test/support/judge-stiffness.ts';
import { randomBlank, type TrueBlank } from '../test/support/simulated-bench.ts';
import { commonStand, photographStand, type StandPicture } from '../test/support/simulated-stand.ts';
import { fitBlankOf, weightFor } from '../test/support/stand-blank.ts';
import { together } from '../test/support/stand-mishaps.ts';

export interface ThirdRow {
  third: string;
  /** Middle of the foretold bend's error, of the band's width and root mean square of ln EI. */
  unseen: number;
  bandWidth: number;
  stiffnessRms: number;
  /** On how many stands its band is the narrowest of the thirds. */
  narrowest: number;
}

/** Half of the blanks bowed, and believed to be; half with ferrules that are told. */
export function compareThirds(count: number, firstSeed: number): ThirdRow[] {
  const results = new Map<string, StiffnessJudgement[]>();
  for (let i = 0; i < count; i++) {
    const [seed, sweepSigmaPerM] = [firstSeed + i, i % 2 === 0 ? 0.01 : 0];
    const blank = randomBlank(seed, { sweepSigmaPerM, ferrules: i % 4 < 2 ? 0 : undefined });
    for (const [third, picture] of Object.entries(thirdsOf(blank))) {
      const judged = judgedWith(picture, { blank, seed, sweepSigmaPerM });
      results.set(third, [...(results.get(third) ?? []), judged]);
    }
  }
  const thirds = [...results].filter(([third]) => third !== 'none');
  return [...results].map(([third, rows]) => ({
    third,
    unseen: middle(rows.map(({ unseen }) => unseen)),
    bandWidth: middle(rows.map(({ bandWidth }) => bandWidth)),
    stiffnessRms: Math.sqrt(middle(rows.map(({ stiffnessRms }) => stiffnessRms ** 2))),
    narrowest: rows.filter(
      ({ bandWidth }, i) =>
        third !== 'none' && thirds.every(([, others]) => bandWidth <= others[i].bandWidth),
    ).length,
  }));
}

const secondTimes = 2.2;

function thirdsOf(blank: TrueBlank): Record<string, StandPicture | undefined> {
  const hungKg = weightFor(blank, 1 / 3);
  const upM = 0.5 * blank.lengthM;
  return {
    none: undefined,
    'twice the weight': { hungKg: secondTimes * hungKg },
    'hold moved up to half': { hungKg: weightFor({ ...blank, lengthM: upM }, 1 / 3), clampFromTipM: upM },
    'turned half over': { hungKg, turnedRad: Math.PI },
    'the same once more': { hungKg },
  };
}

function judgedWith(
  third: StandPicture | undefined,
  { blank, seed, sweepSigmaPerM }: { blank: TrueBlank; seed: number; sweepSigmaPerM: number },
): StiffnessJudgement {
  const hungKg = weightFor(blank, 1 / 3);
  const pictures = [{ hungKg: 0 }, { hungKg }, ...(third ? [third] : [])];
  const errors = { ...commonStand, unevenPx: 0.15, tappedOnce: seed % 2 === 0 };
  const { setups } = photographStand(blank, pictures, 7 * seed, errors);
  const asked = { ...fitBlankOf(blank, seed + 9), ...(sweepSigmaPerM > 0 ? { sweepSigmaPerM } : {}) };
  return judgeStiffness(blank, fit({ blank: asked, setups: together(setups) }) as FitSolved, 3 * hungKg);
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}
