/**
 * The rod before and after its tip was lost: the same blank, its tables cut at the break. Bend and frequency by the
 * engine's own bend and frequency; nothing of a new tip-top's stiffness is counted, its mass is.
 */
import type { BlankTables } from '../bench/free-rod.ts';
import { freeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import type { PointMass } from '../bend/mesh.ts';
import { frequency } from '../frequency/frequency.ts';
import type { LadderRod } from '../layout/ladder-request.ts';
import { massForThirdKg } from '../layout/tip-load.ts';
import { standardGravity } from '../units/gravity.ts';

export interface RodShape {
  lengthM: number;
  /** Tip first, from the clamp, level butt: to draw it by. */
  points: { xM: number; yM: number }[];
  tipDropM: number;
  hz: number | undefined;
  /** Weight that lowers the tip by a third of the free length. */
  thirdLoadKg: number | undefined;
}
export interface ShortenedRod {
  loadKg: number;
  before: RodShape;
  after: RodShape;
}
interface ShortenInput {
  tables: BlankTables;
  /** Tip to the front of the grip, before. */
  freeLengthM: number;
  lostM: number;
  /** The weight both are drawn under. */
  loadKg: number;
  /** Guides and tip-top before and after, each from the tip of its own time. */
  massesBefore?: readonly PointMass[];
  massesAfter?: readonly PointMass[];
}

/** Undefined where less than a hand's breadth would be left, or no bend is found. */
export function shortenRod(input: ShortenInput): ShortenedRod | undefined {
  const { tables, freeLengthM, lostM, loadKg } = input;
  if (!(freeLengthM - lostM > 0.3)) return undefined;
  const before = shapeOf(tables, freeLengthM, loadKg, input.massesBefore ?? []);
  const after = shapeOf(cutTables(tables, lostM), freeLengthM - lostM, loadKg, input.massesAfter ?? []);
  return before && after && { loadKg, before, after };
}

/** The tables with their first `lostM` cut away; station 0 is the break. */
export function cutTables(tables: BlankTables, lostM: number): BlankTables {
  return {
    stiffness: cut(tables.stiffness, lostM, 'EINm2'),
    massPerLength: cut(tables.massPerLength, lostM, 'kgPerM'),
    ...(tables.restCurvature ? { restCurvature: cut(tables.restCurvature, lostM, 'perM') } : {}),
  };
}

/** A rod with its first `lostM` cut away, whatever is known of its twist. */
export function cutRod(rod: LadderRod, lostM: number): LadderRod {
  const { stiffness, massPerLength, restCurvature, torsion } = rod;
  return {
    ...rod,
    lengthM: rod.lengthM - lostM,
    stiffness: cut(stiffness, lostM, 'EINm2'),
    ...(massPerLength ? { massPerLength: cut(massPerLength, lostM, 'kgPerM') } : {}),
    ...(restCurvature ? { restCurvature: cut(restCurvature, lostM, 'perM') } : {}),
    ...(torsion ? { torsion: cut(torsion, lostM, 'GJNm2') } : {}),
  };
}

function cut<K extends string>(
  rows: readonly ({ fromTipM: number } & Record<K, number>)[],
  atM: number,
  column: K,
): ({ fromTipM: number } & Record<K, number>)[] {
  const next = rows.findIndex(({ fromTipM }) => fromTipM > atM);
  if (next < 0) return rows.slice(-1).map((row) => ({ ...row, fromTipM: 0 }));
  const [a, b] = [rows[Math.max(0, next - 1)], rows[next]];
  const share = b.fromTipM > a.fromTipM ? (atM - a.fromTipM) / (b.fromTipM - a.fromTipM) : 1;
  const first = { ...b, fromTipM: 0, [column]: a[column] + Math.max(0, share) * (b[column] - a[column]) };
  return [first, ...rows.slice(next).map((row) => ({ ...row, fromTipM: row.fromTipM - atM }))];
}

function shapeOf(
  tables: BlankTables,
  lengthM: number,
  loadKg: number,
  masses: readonly PointMass[],
): RodShape | undefined {
  const rod = freeRod(tables, lengthM);
  const bare = { lengthM, stiffness: rod.stiffness, massPerLength: rod.massPerLength };
  const bent = bend({
    rod,
    buttAngleRad: 0,
    masses,
    load: { tip: { xN: 0, yN: -loadKg * standardGravity } },
  });
  if (bent.status !== 'converged') return undefined;
  const swing = frequency({ rod: bare, masses, modes: 1 });
  return {
    lengthM,
    points: bent.points.map(({ xM, yM }) => ({ xM, yM })),
    tipDropM: -bent.points[0].yM,
    hz: swing.status === 'converged' ? swing.hz[0] : undefined,
    thirdLoadKg: massForThirdKg(bare),
  };
}
