/**
 * A traced curve beside the predicted bend, flag by flag.
 *
 * Frame of the prediction: origin where the blank leaves its hold, x level and outwards, y up. The picture's plane
 * has y up and may show the rod pointing either way; only a shift and that mirror are taken out, so marks that are
 * not level stay an error (a degree moves the tip of a 2.5 m rod by 44 mm). The butt's direction is that of the
 * parabola through the curve's first eighth, at the hold.
 */
import type { PredictedPlace } from './predict-places.ts';

export interface PlanePlace {
  xM: number;
  yM: number;
}
export interface OrientedCurve {
  /** From the hold to the tip, hold at the origin, outwards and up. */
  places: { outM: number; upM: number; fromTipM: number }[];
  lengthM: number;
  /** Of the axis at the hold above the level. */
  buttAngleRad: number;
  /** The rod pointed left in the picture's plane. */
  mirrored: boolean;
}

/** Butt to tip; undefined for fewer than eight places or none of length. */
export function orientCurve(points: readonly PlanePlace[]): OrientedCurve | undefined {
  if (points.length < 8) return undefined;
  const [hold, tip] = [points[0], points[points.length - 1]];
  const mirrored = tip.xM < hold.xM;
  const sign = mirrored ? -1 : 1;
  const along = [0];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    along.push(along[i - 1] + Math.hypot(b.xM - a.xM, b.yM - a.yM));
  }
  const lengthM = along[along.length - 1];
  if (!(lengthM > 0)) return undefined;
  const places = points.map(({ xM, yM }, i) => ({
    outM: sign * (xM - hold.xM),
    upM: yM - hold.yM,
    fromTipM: lengthM - along[i],
  }));
  return { places, lengthM, mirrored, buttAngleRad: directionAtHold(places, lengthM) };
}

/** Where the curve stands a distance from its tip; linear between the places on both sides. */
export function placeOnCurve({ places }: OrientedCurve, fromTipM: number): { outM: number; upM: number } {
  const next = places.findIndex((place) => place.fromTipM <= fromTipM);
  if (next <= 0) return places[next < 0 ? places.length - 1 : 0];
  const [far, near] = [places[next - 1], places[next]];
  const share = (far.fromTipM - fromTipM) / (far.fromTipM - near.fromTipM || 1);
  return { outM: far.outM + share * (near.outM - far.outM), upM: far.upM + share * (near.upM - far.upM) };
}

export interface FlagBeside {
  fromTipM: number;
  seen: { outM: number; upM: number };
  predicted: PredictedPlace;
  /** Seen less predicted, and how far apart the two are. */
  offOutM: number;
  offUpM: number;
  apartM: number;
}

/** Every predicted place beside what the curve shows there. */
export function curveBeside(curve: OrientedCurve, predicted: readonly PredictedPlace[]): FlagBeside[] {
  return predicted.map((place) => {
    const seen = placeOnCurve(curve, place.fromTipM);
    const [offOutM, offUpM] = [seen.outM - place.outM, seen.upM - place.upM];
    return {
      fromTipM: place.fromTipM,
      seen,
      predicted: place,
      offOutM,
      offUpM,
      apartM: Math.hypot(offOutM, offUpM),
    };
  });
}

/** Least squares of out and up as quadratics of the way from the hold, without a constant. */
function directionAtHold(places: OrientedCurve['places'], lengthM: number): number {
  const first = places.filter(({ fromTipM }) => lengthM - fromTipM <= lengthM / 8);
  const used = first.length >= 4 ? first : places.slice(0, 4);
  const slope = (of: 'outM' | 'upM') => {
    const sums = { s2: 0, s3: 0, s4: 0, v1: 0, v2: 0 };
    for (const place of used) {
      const s = lengthM - place.fromTipM;
      sums.s2 += s ** 2;
      sums.s3 += s ** 3;
      sums.s4 += s ** 4;
      sums.v1 += s * place[of];
      sums.v2 += s * s * place[of];
    }
    return (sums.v1 * sums.s4 - sums.v2 * sums.s3) / (sums.s2 * sums.s4 - sums.s3 * sums.s3);
  };
  return Math.atan2(slope('upM'), slope('outM'));
}
