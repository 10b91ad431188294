/**
 * What a phone's photograph makes of a true curve: marks at the corners of the picture placed a little wrong (a
 * wrong homography), a lens not quite taken out, a frame not quite level, taps beside the ends, and an uneven
 * trace. A model of its own: it shares no term with the fit's (src/engine/stiffness/curve-drift.ts). Sizes:
 * what tracing rendered photographs left over (src/image/trace), a few millimetres of drift, under 1 mm of unevenness.
 */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import { homographyApply, homographyFit } from '../../src/image/camera/homography.ts';
import { type Curve, placeOn } from './simulated-bench.ts';

export interface PhotoErrors {
  /** Standard deviation of each corner mark's place, the lens's leftover at the corner, unevenness. */
  markM: number;
  lensM: number;
  localM: number;
  levelRad: number;
  tapM: number;
}
export const commonPhoto: PhotoErrors = {
  markM: 0.003,
  lensM: 0.003,
  localM: 0.0007,
  levelRad: 0.005,
  tapM: 0.002,
};

/** The curve as it would be traced, hold to tip, a place a centimetre or so. */
export function photograph(curve: Curve, seed: number, errors: PhotoErrors = commonPhoto): Place[] {
  return photographer(curve, seed, errors).trace();
}

interface Place {
  xM: number;
  yM: number;
}

/** One picture: the curve in it, and where it shows any other place of the plane. */
export function photographer(curve: Curve, seed: number, errors: PhotoErrors = commonPhoto) {
  const normal = seededNormal(seededRandom(seed));
  const warp = warpOf(curve, normal, errors);
  const [holdTap, tipTap] = [Math.abs(normal()), Math.abs(normal())].map((n) => n * errors.tapM);
  const lengthM = curve.fromTipM[0];
  const count = Math.round(lengthM / 0.012);
  const unevenX = unevenness(lengthM, normal, errors.localM);
  const unevenY = unevenness(lengthM, normal, errors.localM);
  const see = (place: Place): Place => {
    const { x, y } = warp(place);
    return { xM: x, yM: y };
  };
  const trace = () =>
    Array.from({ length: count + 1 }, (_, i) => {
      const fromHold = holdTap + ((lengthM - holdTap - tipTap) * i) / count;
      const seen = see(placeOn(curve, lengthM - fromHold));
      return { xM: seen.xM + unevenX(fromHold), yM: seen.yM + unevenY(fromHold) };
    });
  return { trace, see };
}

/** Through marks placed a little wrong, a lens not quite known and a frame not quite level. */
function warpOf({ xM, yM }: Curve, normal: () => number, { markM, lensM, levelRad }: PhotoErrors) {
  const [left, right] = [Math.min(...xM) - 0.15, Math.max(...xM) + 0.15];
  const [low, high] = [Math.min(...yM) - 0.3, Math.max(...yM) + 0.3];
  const corners = [left, right].flatMap((x) => [low, high].map((y) => ({ x, y })));
  const shifted = corners.map(({ x, y }) => ({ x: x + markM * normal(), y: y + markM * normal() }));
  const { homography } = homographyFit(corners.map((plane, i) => ({ plane, picture: shifted[i] })));
  const middle = { x: 0.5 * (left + right), y: 0.5 * (low + high) };
  const cornerM = Math.hypot(right - middle.x, high - middle.y);
  const lens = lensM * normal();
  const turn = levelRad * normal();
  return ({ xM: x, yM: y }: Place) => {
    const dx = (x - middle.x) / cornerM;
    const dy = (y - middle.y) / cornerM;
    const r2 = dx * dx + dy * dy;
    const out = lens * r2 * (1.7 - 0.7 * r2);
    const p = homographyApply(homography, { x: x + out * dx, y: y + out * dy });
    return { x: p.x * Math.cos(turn) - p.y * Math.sin(turn), y: p.x * Math.sin(turn) + p.y * Math.cos(turn) };
  };
}

/** Errors that hold on over about 3 cm. */
function unevenness(lengthM: number, normal: () => number, sigmaM: number): (alongM: number) => number {
  const stepM = 0.03;
  const values = Array.from({ length: Math.ceil(lengthM / stepM) + 2 }, () => sigmaM * normal());
  return (alongM) => {
    const i = Math.floor(alongM / stepM);
    const t = alongM / stepM - i;
    return ((1 - t) * values[i] + t * values[i + 1]) / Math.sqrt((1 - t) ** 2 + t * t);
  };
}
