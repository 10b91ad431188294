/**
 * A layout's readings as the bench sees them: the gap that a rule reads, the strain of the surface.
 *
 * Gap by rule: from the blank's surface, halfway between two guides, square to the line; the surface stands
 * OD/2 off the axis towards the line. The criterion's gap (bend/reading.ts) takes the ring height off instead,
 * so a rule reads about ring height − OD/2 more.
 * Surface strain ε = κ·OD/2 of the curvature under load, the natural bow taken off, per element (bench/strain.ts).
 */
import { surfaceStrainPercent } from '../bench/strain.ts';
import { sideSign } from '../bend/bend.ts';
import {
  integralBetween,
  type PiecewiseLinear,
  piecewiseLinear,
  valueAt,
} from '../numerics/piecewise-linear.ts';
import type { LadderReading, LoadReading } from './ladder.ts';
import type { Ladder } from './ladder-request.ts';

export interface OutsideDiameter {
  fromTipM: number;
  outsideM: number;
}
export interface RuledSpan {
  /** What a rule reads at mid-span; negative where the line lies behind the surface. */
  ruleGapM: number;
}
export interface LargestStrain {
  percent: number;
  fromTipM: number;
}
export interface RuledLoad extends LoadReading {
  ruled: RuledSpan[];
  strain: LargestStrain;
}
export interface RuledReading extends LadderReading {
  loads: RuledLoad[];
}

/** `fromTipM`: the guides' stations that `reading` is of. Diameters ascend from the tip; at least one. */
export function ruleLadder(
  ladder: Ladder,
  fromTipM: readonly number[],
  reading: LadderReading,
  diameters: readonly OutsideDiameter[],
): RuledReading {
  const outside = piecewiseLinear(
    diameters.map((row) => row.fromTipM),
    diameters.map((row) => row.outsideM),
  );
  const stations = [0, ...fromTipM];
  const loads = reading.loads.map((load) => ({
    ...load,
    ruled: load.spans.map((_, span) => ruleSpan(ladder, load, stations, span, outside)),
    strain: largestStrain(ladder, load, outside),
  }));
  return { ...reading, loads };
}

function ruleSpan(
  ladder: Ladder,
  load: LoadReading,
  stations: readonly number[],
  span: number,
  outside: PiecewiseLinear,
): RuledSpan {
  const [near, far] = [stations[span], stations[span + 1]];
  const middle = axisAt(load, (near + far) / 2);
  const [tipSide, buttSide] = [load.rings[span], load.rings[span + 1]];
  const dx = tipSide.xM - buttSide.xM;
  const dy = tipSide.yM - buttSide.yM;
  const across = (middle.yM - buttSide.yM) * dx - (middle.xM - buttSide.xM) * dy;
  const standOffM = load.zM
    ? offTheLine(middle, tipSide, buttSide)
    : (-sideSign(ladder.request.guides.side) * across) / Math.hypot(dx, dy);
  return { ruleGapM: standOffM - valueAt(outside, (near + far) / 2) / 2 };
}

interface Place {
  xM: number;
  yM: number;
  zM?: number;
}

/** Distance in space from a place to the straight line through two rings. */
function offTheLine(from: Place, tipSide: Place, buttSide: Place): number {
  const between = (to: Place) => [
    to.xM - buttSide.xM,
    to.yM - buttSide.yM,
    (to.zM ?? 0) - (buttSide.zM ?? 0),
  ];
  const [px, py, pz] = between(from);
  const [ux, uy, uz] = between(tipSide);
  const across = Math.hypot(py * uz - pz * uy, pz * ux - px * uz, px * uy - py * ux);
  return across / Math.hypot(ux, uy, uz);
}

/** A place on the bent axis, linear between the nodes on both sides. */
export function axisAt({ fromTipM, xM, yM, zM }: LoadReading, atM: number) {
  let high = 1;
  while (high < fromTipM.length - 1 && fromTipM[high] < atM) high++;
  const share = (atM - fromTipM[high - 1]) / (fromTipM[high] - fromTipM[high - 1]);
  const between = (of: Float64Array) => of[high - 1] + share * (of[high] - of[high - 1]);
  return { xM: between(xM), yM: between(yM), zM: zM && between(zM) };
}

function largestStrain(ladder: Ladder, load: LoadReading, outside: PiecewiseLinear): LargestStrain {
  const { fromTipM, angleRad } = load;
  const largest = { percent: 0, fromTipM: 0 };
  for (let i = 1; i < fromTipM.length; i++) {
    const [near, far] = [fromTipM[i - 1], fromTipM[i]];
    const turn = angleRad[i - 1] - angleRad[i] - restTurn(ladder, near, far);
    const at = (near + far) / 2;
    const percent = surfaceStrainPercent(turn / (far - near), valueAt(outside, at));
    if (percent > largest.percent) {
      largest.percent = percent;
      largest.fromTipM = at;
    }
  }
  return largest;
}

function restTurn(ladder: Ladder, near: number, far: number): number {
  return ladder.rod.rest ? integralBetween(ladder.rod.rest, near, far) : 0;
}
