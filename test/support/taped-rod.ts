/**
 * Invented taped-up rods, photographed: a random blank (simulated-bench.ts) cut at the grip, guides taped where they
 * are told, bent with the line through its rings by the bend at a fine mesh, and seen through the simulated camera
 * (simulated-photo.ts). The bend itself is checked against closed forms elsewhere; what is tried here is what the
 * judging makes of a photograph of it.
 */
import { bend } from '../../src/engine/bend/bend.ts';
import type { LadderLoad, LadderRequest } from '../../src/engine/layout/ladder-request.ts';
import { arithmeticRule, defaultLadder, defaultLimits } from '../../src/engine/layout/layout-defaults.ts';
import type { LayoutRequest } from '../../src/engine/layout/layout-request.ts';
import { piecewiseLinear, valueAt } from '../../src/engine/numerics/piecewise-linear.ts';
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { PlanePoint } from '../../src/engine/stiffness/curve-places.ts';
import { type Curve, placeOn, randomBlank, type TrueBlank } from './simulated-bench.ts';
import { commonPhoto, photographer } from './simulated-photo.ts';

export interface TapedRod {
  blank: TrueBlank;
  freeM: number;
  /** On the true rod. */
  layout: LayoutRequest & LadderRequest;
  startFromTipM: number[];
}

export function tapedRod(seed: number, { soft = 1 }: { soft?: number } = {}): TapedRod {
  const made = randomBlank(seed, { sweepSigmaPerM: 0 });
  const blank = soft === 1 ? made : { ...made, stiffnessNm2: softened(made, soft) };
  const freeM = blank.lengthM - 0.25;
  const at = Array.from({ length: 240 }, (_, i) => (i / 239) * freeM);
  const rod = {
    lengthM: freeM,
    stiffness: at.map((fromTipM) => ({ fromTipM, EINm2: blank.stiffnessNm2(fromTipM) })),
    massPerLength: at.map((fromTipM) => ({ fromTipM, kgPerM: blank.kgPerM(fromTipM) })),
  };
  const count = freeM > 2.2 ? 9 : 7;
  const [first, last] = [0.115, freeM - 0.5];
  const ladder = defaultLadder(rod);
  if (!ladder) throw new Error('this invented rod has no ladder');
  return {
    blank,
    freeM,
    startFromTipM: arithmeticRule(first, last, count),
    layout: {
      rod,
      buttAngleRad: Math.PI / 4,
      reel: { alongM: -0.12, offsetM: 0.025 },
      guides: {
        count,
        ringHeightsM: Array.from({ length: count }, (_, i) => 0.005 + 0.0018 * i),
        massesKg: Array.from({ length: count }, (_, i) => 0.0001 + 0.00008 * i),
        side: 'under',
      },
      tipTop: { ringHeightM: 0.003, massKg: 0.0002 },
      firstFromTipM: first,
      strippingFromTipM: last,
      footM: Array.from({ length: count }, () => 0.03),
      intervals: 'growing',
      ladder,
      limits: defaultLimits(freeM),
    },
  };
}

/** Softer over the middle third: what a bench that never saw it gets wrong. */
function softened(blank: TrueBlank, factor: number) {
  const [from, to] = [0.25 * blank.lengthM, 0.5 * blank.lengthM];
  return (s: number) => blank.stiffnessNm2(s) * (s > from && s < to ? factor : 1);
}

export interface TapedPhoto {
  points: PlanePoint[];
  /** The tip-top first. */
  ringsSeen: PlanePoint[];
  load: LadderLoad;
}

/** The rod with its guides at `fromTipM`, under one load of its ladder, as the picture shows it. */
export function photographTaped(
  rod: TapedRod,
  fromTipM: readonly number[],
  load: LadderLoad,
  seed: number,
): TapedPhoto {
  const { layout } = rod;
  const normal = seededNormal(seededRandom(seed));
  const heights = [layout.tipTop.ringHeightM, ...layout.guides.ringHeightsM];
  const guides = [0, ...fromTipM].map((at, i) => ({
    fromTipM: at,
    ringHeightM: heights[i],
    side: layout.guides.side,
  }));
  const masses = [
    { fromTipM: 0, massKg: layout.tipTop.massKg ?? 0 },
    ...fromTipM.map((at, i) => ({ fromTipM: at, massKg: layout.guides.massesKg?.[i] ?? 0 })),
  ];
  const tiltRad = (Math.PI / 180) * normal();
  const bent = bend(
    {
      rod: layout.rod,
      buttAngleRad: layout.buttAngleRad + tiltRad,
      masses,
      guides,
      reel: layout.reel,
      load: { line: { tensionN: load.tensionN, pullAngleRad: load.pullAngleRad } },
    },
    { resolution: 800 },
  );
  const curve = evenly(bent.points);
  const { trace, see } = photographer(curve, seed + 1, commonPhoto);
  const ringsSeen = bent.rings.map(({ xM, yM }) => {
    const at = see({ xM, yM });
    return { xM: at.xM + 0.001 * normal(), yM: at.yM + 0.001 * normal() };
  });
  return { points: trace(), ringsSeen, load };
}

/** At equal steps from the hold to the tip. */
export function evenly(points: readonly { fromTipM: number; xM: number; yM: number }[]) {
  const at = points.map(({ fromTipM }) => fromTipM);
  const lengthM = at[at.length - 1];
  const fromTipM = Float64Array.from({ length: 801 }, (_, i) => lengthM * (1 - i / 800));
  const column = (key: 'xM' | 'yM') => {
    const table = piecewiseLinear(
      at,
      points.map((point) => point[key]),
    );
    return fromTipM.map((s) => valueAt(table, s));
  };
  return { fromTipM, xM: column('xM'), yM: column('yM') };
}

/** The part of a curve next its tip. */
export function topShare(curve: Curve, share: number): Curve {
  const fromTipM = Float64Array.from({ length: 401 }, (_, i) => share * curve.fromTipM[0] * (1 - i / 400));
  const places = [...fromTipM].map((at) => placeOn(curve, at));
  const column = (key: 'xM' | 'yM') => Float64Array.from(places, (place) => place[key]);
  return { fromTipM, xM: column('xM'), yM: column('yM') };
}
