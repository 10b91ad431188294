/** A fitted blank against the true one: a bend never hung, the band, EI itself. */
import { bend } from '../../src/engine/bend/bend.ts';
import { piecewiseLinear, valueAt } from '../../src/engine/numerics/piecewise-linear.ts';
import type { FitSolved } from '../../src/engine/stiffness/request.ts';
import { placeOn, type TrueBlank, trueCurve } from './simulated-bench.ts';

export interface StiffnessJudgement {
  /** Largest distance between the foretold and the true curve, over the length. */
  unseen: number;
  /** Share of the blank where the band holds the truth. */
  held: number;
  /** Root mean square of ln EI. */
  stiffnessRms: number;
  /** Mean width of the band, of ln EI. */
  bandWidth: number;
}

/** The bend that is foretold: butt at 45°, `hungKg` at the tip. */
export function judgeStiffness(blank: TrueBlank, answer: FitSolved, hungKg: number): StiffnessJudgement {
  const { lengthM } = blank;
  const at = answer.stiffness.map(({ fromTipM }) => fromTipM);
  const column = (key: 'EINm2' | 'lowNm2' | 'highNm2') =>
    piecewiseLinear(
      at,
      answer.stiffness.map((row) => row[key]),
    );
  const [middle, low, high] = [column('EINm2'), column('lowNm2'), column('highNm2')];
  const stations = Array.from({ length: 60 }, (_, i) => 0.05 + (i / 59) * (lengthM - 0.07));
  const mean = (of: (station: number) => number) =>
    stations.reduce((sum, station) => sum + of(station), 0) / stations.length;
  return {
    unseen: unseenBend(blank, answer, hungKg),
    held: mean((s) => {
      const value = blank.stiffnessNm2(s);
      return value >= valueAt(low, s) && value <= valueAt(high, s) ? 1 : 0;
    }),
    stiffnessRms: Math.sqrt(mean((s) => Math.log(valueAt(middle, s) / blank.stiffnessNm2(s)) ** 2)),
    bandWidth: mean((s) => Math.log(valueAt(high, s) / valueAt(low, s))),
  };
}

function unseenBend(blank: TrueBlank, answer: FitSolved, hungKg: number): number {
  const { lengthM } = blank;
  const { stiffness, massPerLength, restCurvature } = answer;
  const told = bend({
    rod: { lengthM, stiffness, massPerLength, restCurvature },
    buttAngleRad: Math.PI / 4,
    load: { tip: { xN: 0, yN: -hungKg * 9.80665 } },
  });
  if (told.status === 'not-converged') throw new Error('the fitted blank makes no rod');
  const hung = [{ fromTipM: 0, massKg: hungKg }];
  const truth = trueCurve(blank, { buttAngleRad: Math.PI / 4, clampFromTipM: lengthM, turnedRad: 0, hung });
  const off = told.points.map(({ fromTipM, xM, yM }) => {
    const place = placeOn(truth, fromTipM);
    return Math.hypot(xM - place.xM, yM - place.yM);
  });
  return Math.max(...off) / lengthM;
}
