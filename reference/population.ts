/**
 * Random rods and loads, invented, the same for the same seed. 'bench' rods are what a builder clamps: blanks,
 * hardware and pulls within the trade's ranges, any pull direction and clamp angle. 'harsh' ones go on to what a
 * careless hand can type: 20 kg on a fly rod, a kilogram half-way up, threads for tips, rings a millimetre apart
 * or at the clamp, a rod pointing anywhere, a strong natural bow.
 */
import type { BendRequest, GuideOnRod } from '../src/engine/bend/bend.ts';
import type { PointMass } from '../src/engine/bend/mesh.ts';
import type { Rod } from '../src/engine/bend/rod.ts';
import { seededRandom } from '../src/engine/numerics/seeded-random.ts';

export type Harshness = 'bench' | 'harsh';

interface Dice {
  between(low: number, high: number): number;
  /** Evenly in the logarithm. */
  scale(low: number, high: number): number;
  chance(share: number): boolean;
  whole(low: number, high: number): number;
}

export function randomBendRequest(seed: number, harshness: Harshness): BendRequest {
  const dice = diceOf(seededRandom(seed));
  const harsh = harshness === 'harsh';
  const rod = randomRod(dice, harsh);
  const lined = dice.chance(0.8);
  const tied = !lined || dice.chance(0.2);
  const guides = lined ? randomGuides(dice, harsh, rod.lengthM) : [];
  return {
    rod,
    buttAngleRad: randomButtAngle(dice, harsh),
    masses: randomMasses(dice, harsh, rod.lengthM, guides),
    guides,
    ...(lined ? { reel: { alongM: dice.between(-0.3, 0.1), offsetM: dice.between(0, 0.12) } } : {}),
    load: {
      ...(lined ? { line: { tensionN: pullN(dice, harsh), pullAngleRad: pullAngle(dice) } } : {}),
      ...(tied ? { tip: tipForce(dice, harsh) } : {}),
    },
  };
}

function diceOf(random: () => number): Dice {
  const between = (low: number, high: number) => low + (high - low) * random();
  return {
    between,
    scale: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    chance: (share) => random() < share,
    whole: (low, high) => Math.floor(between(low, high + 1)),
  };
}

function randomRod(dice: Dice, harsh: boolean): Rod {
  const lengthM = harsh ? dice.scale(0.3, 6) : dice.between(1.5, 4.3);
  const buttNm2 = harsh ? dice.scale(0.5, 300) : dice.scale(6, 90);
  const ratio = harsh ? dice.scale(1e-5, 1) : dice.scale(8e-4, 0.03);
  const power = dice.between(2, 4);
  const rows = harsh && dice.chance(0.2) ? dice.whole(0, 3) : dice.whole(12, 60);
  const stations = Array.from({ length: rows + 1 }, (_, i) => (rows === 0 ? 0 : (lengthM * i) / rows));
  const wiggle = dice.between(0, harsh ? 0.6 : 0.15);
  const phase = dice.between(0, 6.3);
  const stiffness = stations.map((fromTipM) => {
    const diameter = ratio ** (1 / power) + (1 - ratio ** (1 / power)) * (fromTipM / lengthM);
    return {
      fromTipM,
      EINm2: buttNm2 * diameter ** power * Math.exp(wiggle * Math.sin(phase + (11 * fromTipM) / lengthM)),
    };
  });
  const buttKgPerM = harsh ? dice.scale(0.002, 0.3) : dice.scale(0.012, 0.05);
  const massless = harsh && dice.chance(0.1);
  const massPerLength = stations.map((fromTipM) => ({
    fromTipM,
    kgPerM: massless ? 0 : buttKgPerM * (0.1 + 0.9 * (fromTipM / lengthM)),
  }));
  if (!dice.chance(0.4)) return { lengthM, stiffness, massPerLength };
  const bow = dice.between(-1, 1) * (harsh ? 0.4 : 0.06);
  const restCurvature = [0, 0.5, 1].map((u) => ({
    fromTipM: u * lengthM,
    perM: bow * dice.between(-0.2, 1),
  }));
  return { lengthM, stiffness, massPerLength, restCurvature };
}

function randomGuides(dice: Dice, harsh: boolean, lengthM: number): GuideOnRod[] {
  const count = harsh ? dice.whole(1, 22) : dice.whole(6, 13);
  const side = dice.chance(0.6) ? 'under' : 'over';
  const growth = dice.between(1, 1.25);
  const reach = lengthM * (harsh ? dice.between(0.01, 1) : dice.between(0.6, 0.85));
  const places = [0];
  for (let k = 1; k < count; k++) places.push(places[k - 1] + growth ** k);
  const stretch = count > 1 ? reach / places[count - 1] : 1;
  const tipHeightM = dice.between(0.002, 0.008);
  const buttHeightM = dice.between(0.004, harsh ? 0.08 : 0.035);
  const guides = places.map((place, k) => ({
    fromTipM: Math.min(place * stretch, lengthM),
    ringHeightM: tipHeightM + (buttHeightM - tipHeightM) * (k / Math.max(1, count - 1)) ** 2,
    side: side as GuideOnRod['side'],
  }));
  if (harsh && dice.chance(0.3) && count > 2) {
    // two rings nearly on top of each other
    const k = dice.whole(1, count - 1);
    const nudge = dice.scale(1e-5, 1e-2);
    if (guides[k].fromTipM - nudge > guides[k - 1].fromTipM) {
      guides.splice(k, 0, { ...guides[k], fromTipM: guides[k].fromTipM - nudge });
    }
  }
  return guides;
}

function randomMasses(
  dice: Dice,
  harsh: boolean,
  lengthM: number,
  guides: readonly GuideOnRod[],
): PointMass[] {
  const masses = guides.map(({ fromTipM }) => ({ fromTipM, massKg: dice.scale(1e-4, 2e-3) }));
  if (harsh && dice.chance(0.3)) {
    masses.push({ fromTipM: lengthM * dice.between(0, 1), massKg: dice.scale(0.01, 1.5) });
  }
  return masses;
}

function randomButtAngle(dice: Dice, harsh: boolean): number {
  if (dice.chance(0.1)) return Math.PI / 2;
  return harsh ? dice.between(-Math.PI, Math.PI) : dice.between(-0.3, 1.4);
}

function pullN(dice: Dice, harsh: boolean): number {
  return harsh ? dice.scale(0.01, 200) : dice.scale(0.3, 25);
}

function pullAngle(dice: Dice): number {
  return dice.chance(0.2) ? -Math.PI / 2 : dice.between(-Math.PI, Math.PI);
}

function tipForce(dice: Dice, harsh: boolean) {
  const force = harsh ? dice.scale(0.01, 200) : dice.scale(0.1, 12);
  const direction = pullAngle(dice);
  return { xN: force * Math.cos(direction), yN: force * Math.sin(direction) };
}
