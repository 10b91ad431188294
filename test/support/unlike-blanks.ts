/**
 * A second kind of invented blanks, unlike those that the fit's own simulator makes (simulated-bench.ts): tubes put
 * together from sections, with a step of stiffness at every joint, and on top what a maker or an accident may have
 * done to them. Every shape here is piecewise or local; none is a wave.
 */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { TrueBlank } from './simulated-bench.ts';

export const unlikeKinds = ['plain', 'steps', 'soft', 'fast', 'compound'] as const;
export type UnlikeKind = (typeof unlikeKinds)[number];

export interface UnlikeBlank extends TrueBlank {
  kind: UnlikeKind;
  /** As assembled, tip first; neighbours share a joint's middle as their end. */
  sections: { fromTipM: number; toTipM: number }[];
}

interface Dice {
  between(low: number, high: number): number;
  normal(): number;
  chance(share: number): boolean;
}

/** Kinds in turn: seed 1 is plain, 2 steps, ... */
export function unlikeBlank(seed: number): UnlikeBlank {
  const random = seededRandom(7919 * seed + 13);
  const normal = seededNormal(random);
  const dice: Dice = {
    between: (low, high) => low + (high - low) * random(),
    normal: () => Math.max(-2.5, Math.min(2.5, normal())),
    chance: (share) => random() < share,
  };
  const kind = unlikeKinds[(seed - 1) % unlikeKinds.length];
  const lengthM = dice.between(2.1, 3.1);
  const joints = jointsOf(dice, lengthM, kind);
  const outsideM = outsideOf(dice, lengthM, joints, kind);
  const wallM = wallOf(dice, lengthM);
  const parts = Array.from({ length: joints.length + 1 }, () => ({
    modulus: (kind === 'steps' ? 0.2 : 0.05) * dice.normal(),
    density: 0.03 * dice.normal(),
  }));
  const partOf = (at: number) => parts[joints.filter(({ at: joint }) => joint <= at).length];
  const modulusPa = 100e9 * Math.exp(0.18 * dice.normal());
  const local = localOf(dice, kind, lengthM);
  const stiffnessNm2 = (at: number) => {
    const [od, wall] = [outsideM(at), wallM(at)];
    const inside = Math.max(0, od - 2 * wall);
    const doubled = joints.reduce(
      (by, joint) => by * (isWithin(joint, at) ? joint.timesAsStiff : 1),
      Math.exp(local(at) + partOf(at).modulus),
    );
    return (modulusPa * doubled * Math.PI * (od ** 4 - inside ** 4)) / 64;
  };
  const kgPerM = (at: number) => {
    const [od, wall] = [outsideM(at), wallM(at)];
    const inside = Math.max(0, od - 2 * wall);
    const doubled = joints.some((joint) => isWithin(joint, at)) ? 1.8 : 1;
    return 1530 * Math.exp(partOf(at).density) * doubled * 0.25 * Math.PI * (od ** 2 - inside ** 2);
  };
  const ends = [0, ...joints.map(({ at }) => at), lengthM];
  return {
    kind,
    lengthM,
    stiffnessNm2,
    kgPerM,
    outsideM,
    restPerM: () => 0,
    restAcrossPerM: () => 0,
    ferrules: joints.map(({ at, halfM }) => ({ fromTipM: at - halfM, toTipM: at + halfM })),
    sections: ends.slice(1).map((toTipM, i) => ({ fromTipM: ends[i], toTipM })),
  };
}

interface Joint {
  at: number;
  halfM: number;
  timesAsStiff: number;
  /** How much thinner the blank goes on below the joint (a sleeve over it) [m]. */
  stepM: number;
}

function isWithin({ at, halfM }: Joint, place: number): boolean {
  return Math.abs(place - at) <= halfM;
}

function jointsOf(dice: Dice, lengthM: number, kind: UnlikeKind): Joint[] {
  const count = kind === 'plain' && dice.chance(0.3) ? 0 : dice.chance(0.5) ? 3 : 1;
  const sleeve = dice.chance(0.5);
  return Array.from({ length: count }, (_, k) => ({
    at: ((k + 1) / (count + 1)) * lengthM + dice.between(-0.03, 0.03),
    halfM: dice.between(0.025, 0.04),
    timesAsStiff: dice.between(1.3, 2),
    stepM: sleeve ? dice.between(0.0001, 0.0004) : 0,
  }));
}

/** Straight tapers from kink to kink, less the steps of the joints passed. */
function outsideOf(dice: Dice, lengthM: number, joints: Joint[], kind: UnlikeKind) {
  const tipM = dice.between(0.0015, 0.002);
  const slope = dice.between(0.0025, 0.0032);
  const kinks =
    kind === 'compound'
      ? [0.3, 0.62].map((share) => ({
          at: (share + dice.between(-0.08, 0.08)) * lengthM,
          by: Math.exp(dice.between(-0.55, 0.55)),
        }))
      : [{ at: 0.6 * lengthM, by: Math.exp(dice.between(-0.2, 0.1)) }];
  return (at: number) => {
    let [od, from, now] = [tipM, 0, slope];
    for (const { at: kink, by } of kinks) {
      if (at <= kink) break;
      od += now * (kink - from);
      [from, now] = [kink, now * by];
    }
    od += now * (at - from);
    return od - joints.reduce((sum, joint) => sum + (at > joint.at ? joint.stepM : 0), 0);
  };
}

/** Grows towards the butt. */
function wallOf(dice: Dice, lengthM: number) {
  const tipM = dice.between(0.00035, 0.00045);
  const buttM = dice.between(0.00045, 0.0007);
  return (at: number) => tipM + ((buttM - tipM) * at) / lengthM;
}

/** What no calliper shows, in ln EI. */
function localOf(dice: Dice, kind: UnlikeKind, lengthM: number): (at: number) => number {
  if (kind === 'fast') {
    const reach = dice.between(0.2, 0.35) * lengthM;
    const amount = dice.between(0.4, 1.2);
    return (at) => (at < reach ? -amount * (1 - at / reach) ** 1.5 : 0);
  }
  if (kind !== 'soft') return () => 0;
  const zones = Array.from({ length: dice.chance(0.35) ? 2 : 1 }, () => ({
    at: dice.between(0.12, 0.85) * lengthM,
    halfM: dice.between(0.05, 0.18),
    amount: Math.log(dice.between(0.4, 0.75)),
  }));
  return (at) =>
    zones.reduce((sum, zone) => {
      const u = Math.abs(at - zone.at) / zone.halfM;
      return u < 1 ? sum + zone.amount * Math.cos(0.5 * Math.PI * u) ** 2 : sum;
    }, 0);
}
