/**
 * A rod held at two places: it bends from the upper hand, which is the fulcrum; the lower hand pulls the butt square to
 * the handle and holds the moment. Statics of the bend alone: what pulls on rod and reel, and where.
 */
import type { BendAnswer, BendLoad } from '../bend/bend.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { MassRow } from '../bend/rod.ts';
import { integralBetween, piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { standardGravity } from '../units/gravity.ts';

export interface TwoHands {
  /** Between the middles of the two hands. */
  betweenM: number;
  buttAngleRad: number;
  /** What the bend was asked with; the clamp is the upper hand. */
  load: BendLoad;
  massPerLength?: readonly MassRow[];
  masses?: readonly PointMass[];
  /** Handle and reel: their mass and how far in front of the upper hand they balance (behind it negative). */
  handle?: { massKg: number; alongM: number };
}
export interface HandForces {
  /** Square to the handle, positive upwards: what the lower hand gives. */
  lowerN: number;
  /** What the upper hand gives, square to the handle and along it (positive towards the tip). */
  upperN: number;
  upperAlongN: number;
  /** That the hands hold together about the upper one; positive lifts the tip. */
  momentNm: number;
}

export function twoHands(hands: TwoHands, answer: Pick<BendAnswer, 'points' | 'rings'>): HandForces {
  const pulls = [...linePulls(hands.load, answer), ...weightsOf(hands, answer)];
  const c = Math.cos(hands.buttAngleRad);
  const s = Math.sin(hands.buttAngleRad);
  let [along, across, moment] = [0, 0, 0];
  for (const { xM, yM, xN, yN } of pulls) {
    along += c * xN + s * yN;
    across += c * yN - s * xN;
    moment += xM * yN - yM * xN;
  }
  const momentNm = 0 - moment;
  // behind the fulcrum: pushing down at the butt lifts the tip
  const lowerN = -momentNm / hands.betweenM;
  return { lowerN, upperN: -across - lowerN, upperAlongN: 0 - along, momentNm };
}

interface Pull {
  xM: number;
  yM: number;
  xN: number;
  yN: number;
}

/** Inside the rod and its reel the line's pulls cancel: only the one beyond the tip-top is left. */
function linePulls({ line, tip }: BendLoad, { points, rings }: Pick<BendAnswer, 'points' | 'rings'>): Pull[] {
  const pulls: Pull[] = [];
  if (line && rings.length > 0) {
    const { tensionN, pullAngleRad } = line;
    const { xM, yM } = rings[0];
    pulls.push({ xM, yM, xN: tensionN * Math.cos(pullAngleRad), yN: tensionN * Math.sin(pullAngleRad) });
  }
  if (tip) pulls.push({ xM: points[0].xM, yM: points[0].yM, ...tip });
  return pulls;
}

function weightsOf(hands: TwoHands, { points }: Pick<BendAnswer, 'points'>): Pull[] {
  const { massPerLength, masses = [], handle, buttAngleRad } = hands;
  const hung = (xM: number, yM: number, kg: number): Pull => ({ xM, yM, xN: 0, yN: -kg * standardGravity });
  const pulls = masses.map(({ fromTipM, massKg }) => {
    const { xM, yM } = placeOf(points, fromTipM);
    return hung(xM, yM, massKg);
  });
  if (handle) {
    const { alongM, massKg } = handle;
    pulls.push(hung(alongM * Math.cos(buttAngleRad), alongM * Math.sin(buttAngleRad), massKg));
  }
  if (!massPerLength || massPerLength.length === 0) return pulls;
  const mass = piecewiseLinear(
    massPerLength.map((row) => row.fromTipM),
    massPerLength.map((row) => row.kgPerM),
  );
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const kg = integralBetween(mass, a.fromTipM, b.fromTipM);
    pulls.push(hung(0.5 * (a.xM + b.xM), 0.5 * (a.yM + b.yM), kg));
  }
  return pulls;
}

function placeOf(points: BendAnswer['points'], fromTipM: number): { xM: number; yM: number } {
  const ascending = points.map((point) => point.fromTipM);
  return {
    xM: valueAt(
      piecewiseLinear(
        ascending,
        points.map((point) => point.xM),
      ),
      fromTipM,
    ),
    yM: valueAt(
      piecewiseLinear(
        ascending,
        points.map((point) => point.yM),
      ),
      fromTipM,
    ),
  };
}
