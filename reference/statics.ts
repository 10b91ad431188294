/**
 * Statics of a returned bend, from the answer alone: the moment that the forces beyond each point make about it.
 * Shares nothing with the engine's energy: forces on rings from the directions of the line before and after,
 * weights from the tables by the trapezium rule, arms from the returned places.
 */
import type { BendAnswer, BendRequest } from '../src/engine/bend/bend.ts';
import { piecewiseLinear, valueAt } from '../src/engine/numerics/piecewise-linear.ts';

export interface Force {
  fromTipM: number;
  xM: number;
  yM: number;
  xN: number;
  yN: number;
}

export interface StaticMoment {
  /** Counter-clockwise on the part beyond the point. */
  momentNm: number;
  /** Sum of the sizes of what it is the balance of: its rounding and truncation scale with this. */
  grossNm: number;
}

/** Per returned point, tip first. */
export function momentsFromStatics(request: BendRequest, answer: BendAnswer): StaticMoment[] {
  const forces = forcesOn(request, answer);
  return answer.points.map((point) => {
    let momentNm = 0;
    let grossNm = 0;
    for (const force of forces) {
      const share = shareBeyond(force.fromTipM, point.fromTipM);
      if (share > 0) {
        const part = share * ((force.xM - point.xM) * force.yN - (force.yM - point.yM) * force.xN);
        momentNm += part;
        grossNm += Math.abs(part);
      }
    }
    return { momentNm, grossNm };
  });
}

/** At a ring or a mass the returned curvature is the mean of both sides, so its own force counts half there. */
function shareBeyond(forceFromTipM: number, fromTipM: number): number {
  if (Math.abs(forceFromTipM - fromTipM) > 1e-9) return forceFromTipM < fromTipM ? 1 : 0;
  return fromTipM === 0 ? 1 : 0.5;
}

function forcesOn(request: BendRequest, answer: BendAnswer): Force[] {
  return [...ringForces(request, answer), ...weights(request, answer), ...tipForces(request, answer)];
}

function tipForces({ load }: BendRequest, answer: BendAnswer): Force[] {
  const { xM, yM } = answer.points[0];
  return load.tip ? [{ fromTipM: 0, xM, yM, ...load.tip }] : [];
}

/** Places of a bent rod, tip first, as any solver may give them. */
export interface RodPlaces {
  points: readonly { fromTipM: number; xM: number; yM: number }[];
  rings: readonly { xM: number; yM: number }[];
  /** Tension behind every ring, where friction makes them differ. */
  lineTensionN?: readonly number[];
}

/** The line pulls every ring along both of its arms. */
export function ringForces(request: BendRequest, answer: RodPlaces): Force[] {
  const { guides = [], reel, load, buttAngleRad } = request;
  if (!load.line || !reel) return [];
  const { tensionN, pullAngleRad } = load.line;
  const off = guides[0].side === 'over' ? reel.offsetM : -reel.offsetM;
  const [c, s] = [Math.cos(buttAngleRad), Math.sin(buttAngleRad)];
  const tensions = answer.lineTensionN ?? [];
  const places = [...answer.rings, { xM: reel.alongM * c - off * s, yM: reel.alongM * s + off * c }];
  let ahead = { x: Math.cos(pullAngleRad), y: Math.sin(pullAngleRad) };
  return guides.map(({ fromTipM }, k) => {
    const { xM, yM } = places[k];
    const [dx, dy] = [places[k + 1].xM - xM, places[k + 1].yM - yM];
    const length = Math.hypot(dx, dy);
    const behind = { x: dx / length, y: dy / length };
    const [before, after] = [tensions[k - 1] ?? tensionN, tensions[k] ?? tensionN];
    const force = { xN: before * ahead.x + after * behind.x, yN: before * ahead.y + after * behind.y };
    ahead = { x: -behind.x, y: -behind.y };
    return { fromTipM, xM, yM, ...force };
  });
}

function weights(request: BendRequest, answer: BendAnswer): Force[] {
  const { points } = answer;
  const rows = request.rod.massPerLength ?? [];
  const table = rows.length
    ? piecewiseLinear(
        rows.map((row) => row.fromTipM),
        rows.map((row) => row.kgPerM),
      )
    : undefined;
  const own = points.slice(1).map((point, i) => {
    const fromTipM = 0.5 * (point.fromTipM + points[i].fromTipM);
    const massKg = table ? valueAt(table, fromTipM) * (point.fromTipM - points[i].fromTipM) : 0;
    return weightAt(answer, fromTipM, massKg);
  });
  const hung = (request.masses ?? []).map((mass) => weightAt(answer, mass.fromTipM, mass.massKg));
  return [...own, ...hung];
}

function weightAt(answer: RodPlaces, fromTipM: number, massKg: number): Force {
  return { fromTipM, ...placeAt(answer, fromTipM), xN: 0, yN: -9.80665 * massKg };
}

/** Linear between the returned points. */
export function placeAt({ points }: RodPlaces, fromTipM: number): { xM: number; yM: number } {
  let low = 0;
  let high = points.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle].fromTipM <= fromTipM) low = middle;
    else high = middle;
  }
  const [a, b] = [points[low], points[high]];
  const u = (fromTipM - a.fromTipM) / (b.fromTipM - a.fromTipM);
  return { xM: a.xM + u * (b.xM - a.xM), yM: a.yM + u * (b.yM - a.yM) };
}
