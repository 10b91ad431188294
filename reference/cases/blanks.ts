import type { BendAnswer } from '../../src/engine/bend/bend.ts';
import { largestStrain } from '../../src/engine/bend/strain.ts';
import { standardGravity } from '../../src/engine/units/gravity.ts';
import { type CheckRow, checkRowsOf } from '../check-values.ts';
import { type SyntheticBlank, type SyntheticBlankName, syntheticBlank } from '../synthetic-blank.ts';
import type { Check, CheckGroup } from './check.ts';
import { type Accuracy, lastPart, solved, tipCheck } from './unit-rod.ts';

const names: SyntheticBlankName[] = ['SYN-FLY9', 'SYN-GLASS6'];

/** Two invented blanks with weights hung at the tip and further down, level and raised. */
export function blankBends(accuracy: Accuracy): CheckGroup {
  const checks = names.flatMap((name) => {
    const blank = syntheticBlank(name);
    const rows = ['h.', 'mid', 'a30.', 'a60.'].flatMap((part) => checkRowsOf(`blank.${name}.${part}`));
    return rows.map((row) => bendCheck(blank, row, accuracy));
  });
  const about = `Tip place in metres, tip angle and clamp moment, ${accuracy.resolution} elements.`;
  return { title: 'Two invented blanks, bends', about, checks };
}

function bendCheck(blank: SyntheticBlank, row: CheckRow, accuracy: Accuracy): Check {
  const { inputs } = row;
  const massKg = (inputs.tip_load_kg ?? inputs.load_kg) as number;
  const fromTipM = inputs.load_s === undefined ? 0 : blank.lengthM - (inputs.load_s as number);
  const answer = bendUnder(blank, { fromTipM, massKg }, (inputs.clamp_angle_deg ?? 0) as number, accuracy);
  const end = answer.points[0];
  const ours: Record<string, number> = {
    drop: -end.yM,
    X: end.xM,
    Y: end.yM,
    phi: end.angleRad,
    M: clampMoment(blank, answer),
  };
  const part = lastPart(row.id);
  return tipCheck(row, ours[part], accuracy, part === 'M' ? 10 : blank.rod.lengthM);
}

function bendUnder(
  blank: SyntheticBlank,
  hung: { fromTipM: number; massKg: number },
  clampDegrees: number,
  accuracy: Accuracy,
): BendAnswer {
  const buttAngleRad = (clampDegrees * Math.PI) / 180;
  return solved({ rod: blank.rod, buttAngleRad, masses: [hung], load: {} }, accuracy);
}

function clampMoment(blank: SyntheticBlank, answer: BendAnswer): number {
  const clampStiffness = blank.rod.stiffness[blank.rod.stiffness.length - 1].EINm2;
  return -answer.points[answer.points.length - 1].curvaturePerM * clampStiffness;
}

/** The weight that drops the tip by a third of the blank's whole length below its own sag, and the angle then. */
export function blankThirds(accuracy: Accuracy): CheckGroup {
  const checks = names.flatMap((name) => {
    const blank = syntheticBlank(name);
    const restM = bendUnder(blank, { fromTipM: 0, massKg: 0 }, 0, accuracy).points[0].yM;
    const dropBeyond = (massKg: number) =>
      restM - bendUnder(blank, { fromTipM: 0, massKg }, 0, accuracy).points[0].yM - blank.lengthM / 3;
    const massKg = rootBetween(dropBeyond, 0.01, 1);
    const end = bendUnder(blank, { fromTipM: 0, massKg }, 0, accuracy).points[0];
    const [weight] = checkRowsOf(`blank.${name}.third.W`);
    const [angle] = checkRowsOf(`blank.${name}.third.angle`);
    return [
      tipCheck(weight, massKg, accuracy, 1),
      tipCheck(angle, (-end.angleRad * 180) / Math.PI, accuracy, 180 / Math.PI),
    ];
  });
  const about =
    'Weight in kg that drops the tip by a third of the blank; tip angle in degrees below horizontal.';
  return { title: 'Two invented blanks, bent by a third', about, checks };
}

function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (a + b);
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
  return 0.5 * (a + b);
}

/** Largest surface strain and where it sits: it travels from the tip to the butt as the load grows. */
export function blankStrains(accuracy: Accuracy): CheckGroup {
  const checks = names.flatMap((name) => {
    const blank = syntheticBlank(name);
    const diameters = blank.rod.stiffness.map(({ fromTipM }) => ({
      fromTipM,
      outsideM: blank.outsideM(fromTipM),
    }));
    return checkRowsOf(`blank.${name}.strain.`).map((row) => {
      const hung = { fromTipM: 0, massKg: row.inputs.tip_load_kg as number };
      const answer = bendUnder(blank, hung, 0, accuracy);
      const worst = largestStrain(answer.points, blank.rod, diameters);
      if (lastPart(row.id) === 'max') return tipCheck(row, worst.strainPercent / 100, accuracy, 0.01);
      const fraction = 1 - worst.fromTipM / blank.rod.lengthM;
      return { ...tipCheck(row, fraction, accuracy), allowance: row.tolerance + 0.02 };
    });
  });
  const about = `Largest κ·OD/2 along the blank and its place as a share of the free length from the clamp (a flat maximum: 0.02 allowed), ${accuracy.resolution} elements. ${standardGravity} m/s².`;
  return { title: 'Two invented blanks, overload strain', about, checks };
}
