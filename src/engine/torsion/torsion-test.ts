/**
 * GJ from the bench: the blank clamped, its tip rested in a V so that it can turn and not drop, a bar clamped across
 * it, a weight hung at the bar's end. Hung left and then right, half the difference of the bar's angles is the twist:
 * how the bar stood without a weight drops out. The weight's arm shortens as the bar turns, T = m g a cos φ.
 *
 * With GJ a constant share ρ of EI, φ = T/ρ · ∫ ds/EI from the clamp to the bar. ρ is the least-squares share of all
 * readings; its band adds the angles' and the arms' doubt to that of EI.
 */
import { type Finding, findingsOf } from '../finding.ts';
import { piecewiseLinear, reciprocalIntegralBetween } from '../numerics/piecewise-linear.ts';
import type { TorsionRow } from '../space/space-request.ts';
import { standardGravity } from '../units/gravity.ts';
import type { TorsionKinds } from './torsion-kinds.ts';
import { torsionFromRatio } from './torsion-ratio.ts';

export interface TwistReading {
  massKg: number;
  /** From the blank's axis to where the weight hangs. */
  armM: number;
  /** Of the bar against level with the weight on the left, and on the right; down on the weight's side. */
  leftRad: number;
  rightRad: number;
}
export interface TwistTest {
  /** EI of the blank, with its 95 % band where it is known. */
  stiffness: readonly { fromTipM: number; EINm2: number; lowNm2?: number; highNm2?: number }[];
  clampFromTipM: number;
  /** Where the bar is clamped; 0 at the tip. */
  barFromTipM: number;
  readings: readonly TwistReading[];
  /** One standard deviation of one reading of the angle; left out: half a degree, a phone laid on the bar. */
  sigmaRad?: number;
  /** Of the arm; left out: 1 mm. */
  armSigmaM?: number;
}
export interface MeasuredTorsion {
  /** GJ/EI with its 95 % band. */
  ratio: number;
  low: number;
  high: number;
  torsion: TorsionRow[];
  residualRmsRad: number;
}
export interface TwistAnswer {
  measured?: MeasuredTorsion;
  findings: Finding[];
}

export const twistTestDefaults = {
  sigmaRad: (0.5 * Math.PI) / 180,
  armSigmaM: 1e-3,
  /** Beyond this the bar runs into the stand: clamp a shorter arm or hang less. */
  mostTurnRad: 1.2,
  /** No tube is stiffer in twist than one of a single material, and none in use is softer than this. */
  leastRatio: 0.04,
  mostRatio: 0.85,
};

const found = findingsOf<TorsionKinds>();

/** Readings with no angle, no arm or no weight are left out and named. */
export function measureTorsion(test: TwistTest): TwistAnswer {
  const { sigmaRad = twistTestDefaults.sigmaRad, armSigmaM = twistTestDefaults.armSigmaM } = test;
  const twists = test.readings.map((reading) => twistOf(reading, sigmaRad, armSigmaM));
  const doubts = test.readings.flatMap((reading, i) => readingDoubts(reading, twists[i], sigmaRad, i));
  const used = twists.filter(({ torqueNm, turnRad }) => torqueNm > 0 && turnRad > 0);
  if (used.length === 0) return { findings: [...doubts, found('readings', 'torsion/no-reading', {})] };
  const { softness, sigma } = weightedSlope(used);
  const ratio = compliance(test, 'EINm2') / softness;
  const measured: MeasuredTorsion = {
    ratio,
    ...bandOf(test, ratio, sigma / softness),
    torsion: torsionFromRatio(test.stiffness, ratio),
    residualRmsRad: Math.sqrt(
      used.reduce((sum, twist) => sum + (twist.turnRad - softness * twist.torqueNm) ** 2, 0) / used.length,
    ),
  };
  return { measured, findings: [...doubts, ...apart(test, twists, softness), ...ratioDoubts(ratio)] };
}

interface Twist {
  torqueNm: number;
  turnRad: number;
  /** Of the turn, the arm's doubt included. */
  sigmaRad: number;
}

function twistOf(
  { massKg, armM, leftRad, rightRad }: TwistReading,
  sigmaRad: number,
  armSigmaM: number,
): Twist {
  const turnRad = 0.5 * (leftRad + rightRad);
  const arm = armM > 0 ? armSigmaM / armM : 0;
  return {
    torqueNm: massKg * standardGravity * armM * Math.cos(turnRad),
    turnRad,
    sigmaRad: Math.hypot(sigmaRad / Math.SQRT2, turnRad * arm),
  };
}

/** Turn per torque: its weighted mean through the origin, and one standard deviation. */
function weightedSlope(twists: readonly Twist[]): { softness: number; sigma: number } {
  let weight = 0;
  let product = 0;
  for (const { torqueNm, turnRad, sigmaRad } of twists) {
    weight += (torqueNm / sigmaRad) ** 2;
    product += (torqueNm * turnRad) / sigmaRad ** 2;
  }
  return { softness: product / weight, sigma: 1 / Math.sqrt(weight) };
}

/** ∫ ds/EI between bar and clamp. */
function compliance(test: TwistTest, column: 'EINm2' | 'lowNm2' | 'highNm2'): number {
  const table = piecewiseLinear(
    test.stiffness.map((row) => row.fromTipM),
    test.stiffness.map((row) => row[column] ?? row.EINm2),
  );
  return reciprocalIntegralBetween(table, test.barFromTipM, test.clampFromTipM);
}

/** 95 %: the readings' share and EI's, as roots of squares. A softer EI asks for a larger share. */
function bandOf(test: TwistTest, ratio: number, sigmaShare: number): { low: number; high: number } {
  const known = compliance(test, 'EINm2');
  const softer = compliance(test, 'lowNm2') / known - 1;
  const stiffer = 1 - compliance(test, 'highNm2') / known;
  return {
    low: ratio / (1 + Math.hypot(1.96 * sigmaShare, stiffer)),
    high: ratio * (1 + Math.hypot(1.96 * sigmaShare, softer)),
  };
}

function readingDoubts(reading: TwistReading, { turnRad }: Twist, sigmaRad: number, row: number): Finding[] {
  const { massKg, armM } = reading;
  const path = `readings[${row}]`;
  if (turnRad > twistTestDefaults.mostTurnRad) {
    return [found(path, 'torsion/turn-too-large', { turnRad, mostRad: twistTestDefaults.mostTurnRad })];
  }
  if (turnRad > 4 * sigmaRad) return [];
  return [found(path, 'torsion/turn-too-small', { turnRad, sigmaRad, armM, massKg })];
}

/** Readings more than three of their standard deviations from the line through all of them. */
function apart({ readings }: TwistTest, twists: readonly Twist[], softness: number): Finding[] {
  return twists.flatMap(({ torqueNm, turnRad, sigmaRad }, i) => {
    const apartRad = turnRad - softness * torqueNm;
    if (Math.abs(apartRad) <= 3 * sigmaRad) return [];
    return [
      found(`readings[${i}]`, 'torsion/reading-apart', { massKg: readings[i].massKg, apartRad, sigmaRad }),
    ];
  });
}

function ratioDoubts(ratio: number): Finding[] {
  const { leastRatio, mostRatio } = twistTestDefaults;
  if (ratio >= leastRatio && ratio <= mostRatio) return [];
  return [
    found('readings', 'torsion/ratio-of-no-tube', { ratio, leastShare: leastRatio, mostShare: mostRatio }),
  ];
}
