/**
 * What one set-up should show before it is read: the blank as it is best known, held and loaded as planned, and the
 * drop that a tape would read at any flag. Drops count from the straight line through the clamp at the nominal angle,
 * square to it, to the edge that is read (bench/edge.ts has the geometry).
 */
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import { standardGravity } from '../units/gravity.ts';

export interface HeldBlank {
  tables: BlankTables;
  profile: readonly DiameterRow[];
  clampFromTipM: number;
  nominalAngleRad: number;
  /** The clamp's tilt where a fit knows it. */
  tiltRad?: number;
  massKg: number;
  edge: 'upper' | 'axis' | 'lower';
}
export interface ShapePoint {
  fromTipM: number;
  /** Along the nominal line from the clamp, and below it: of the axis. */
  alongM: number;
  dropM: number;
  /** Below the nominal line: of the edge that is read. */
  readM: number;
}

/** Elements enough to expect a reading by, not to measure by. */
const roughly = { resolution: 80 };

/** Tip first; undefined where the blank cannot carry the weight. */
export function expectedShape(held: HeldBlank): ShapePoint[] | undefined {
  const { tables, profile, clampFromTipM, nominalAngleRad, tiltRad = 0, massKg, edge } = held;
  const { status, points } = bend(
    {
      rod: freeRod(tables, clampFromTipM),
      buttAngleRad: nominalAngleRad + tiltRad,
      load: { tip: { xN: 0, yN: -massKg * standardGravity } },
    },
    roughly,
  );
  if (status !== 'converged') return undefined;
  const [c, s] = [Math.cos(nominalAngleRad), Math.sin(nominalAngleRad)];
  const side = { upper: 1, axis: 0, lower: -1 }[edge];
  return points.map(({ fromTipM, xM, yM, angleRad }) => {
    const dropM = xM * s - yM * c;
    const radiusM = (diameterAt(profile, fromTipM) ?? 0) / 2;
    const readM = dropM - side * radiusM * Math.cos(angleRad - nominalAngleRad);
    return { fromTipM, alongM: xM * c + yM * s, dropM, readM };
  });
}

/** The point of the shape at a flag, between the nodes on either side. */
export function shapeAt(shape: readonly ShapePoint[], fromTipM: number): ShapePoint {
  const high = Math.max(
    1,
    shape.findIndex((point) => point.fromTipM >= fromTipM),
  );
  const [a, b] = [shape[high - 1], shape[high]];
  const share = Math.min(1, Math.max(0, (fromTipM - a.fromTipM) / (b.fromTipM - a.fromTipM)));
  const between = (of: (point: ShapePoint) => number) => of(a) + share * (of(b) - of(a));
  return {
    fromTipM,
    alongM: between(({ alongM }) => alongM),
    dropM: between(({ dropM }) => dropM),
    readM: between(({ readM }) => readM),
  };
}
