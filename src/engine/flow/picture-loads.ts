/**
 * What to hang for three pictures of one stand: nothing, the weight that lowers the tip by a third of the free length, and
 * about twice that, as the comparison in docs/three-pictures.md took them. The larger one never strains the surface
 * past the caution level, and both are weights that lie about on a bench.
 */
import type { DiameterRow } from '../bench/diameter-profile.ts';
import { clampHeightNeeded } from '../bench/floor.ts';
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { handyWeightWithin } from '../bench/protocol.ts';
import { bend } from '../bend/bend.ts';
import { largestStrain } from '../bend/strain.ts';
import { standardGravity } from '../units/gravity.ts';

export interface PictureLoadsQuestion {
  /** The blank as it is best known. */
  tables: BlankTables;
  profile: readonly DiameterRow[];
  clampFromTipM: number;
  buttAngleRad: number;
  /** Of the surface strain; see bench/strain.ts. */
  cautionPercent: number;
}
export interface PictureLoads {
  massKg: [nothing: 0, first: number, second: number];
  /** That the larger weight hangs free. */
  clampHeightNeededM: number;
}

/** Of the weight that lowers the tip by a third. */
const secondTimes = 2.2;
const dropShare = 1 / 3;
/** Elements enough to choose a weight by, not to measure by. */
const roughly = { resolution: 60 };

export function pictureLoads(question: PictureLoadsQuestion): PictureLoads {
  const { clampFromTipM, buttAngleRad, cautionPercent } = question;
  const thirdKg = heaviest((massKg) => held(question, massKg).dropM < dropShare * clampFromTipM);
  const safeKg = heaviest((massKg) => held(question, massKg).strainPercent < cautionPercent);
  const second = handyWeightWithin(Math.min(secondTimes * thirdKg, safeKg));
  const first = handyWeightWithin(Math.min(thirdKg, second / 2));
  const { dropM: tipDropM } = held(question, second);
  return {
    massKg: [0, first, second],
    clampHeightNeededM: clampHeightNeeded({
      nominalAngleRad: buttAngleRad,
      freeLengthM: clampFromTipM,
      tipDropM,
    }),
  };
}

/** Drop of the tip below the line through the clamp, square to it, and the largest strain; no bend: beyond all limits. */
function held(
  { tables, profile, clampFromTipM, buttAngleRad }: PictureLoadsQuestion,
  massKg: number,
): { dropM: number; strainPercent: number } {
  const rod = freeRod(tables, clampFromTipM);
  const load = { tip: { xN: 0, yN: -massKg * standardGravity } };
  const { status, points } = bend({ rod, buttAngleRad, load }, roughly);
  if (status !== 'converged') return { dropM: clampFromTipM, strainPercent: Number.POSITIVE_INFINITY };
  const [tip] = points;
  return {
    dropM: tip.xM * Math.sin(buttAngleRad) - tip.yM * Math.cos(buttAngleRad),
    strainPercent: largestStrain(points, rod, profile).strainPercent,
  };
}

/** Bisection on the logarithm of the weight. */
function heaviest(isWithin: (massKg: number) => boolean): number {
  let [low, high] = [1e-4, 20];
  for (let step = 0; step < 40 && high / low > 1.01; step++) {
    const middle = Math.sqrt(low * high);
    if (isWithin(middle)) low = middle;
    else high = middle;
  }
  return low;
}
