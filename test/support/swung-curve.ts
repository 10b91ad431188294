/**
 * A blank that swings about its rest while a picture is taken: the curve in the middle of the exposure, and over how
 * much of the wall each place of it is smeared. The lowest mode by pulls at twelve stations, each as its mass times its
 * own way, added to what hangs; the frequency from how far the tip hangs, as of a mass on a spring.
 */
import { type Curve, placeOn, type TrueBlank, type TrueLoad, trueCurve } from './simulated-bench.ts';

export interface Swing {
  /** Of the tip, to each side. */
  amplitudeM: number;
  /** Of the swing in the middle of the exposure. */
  phaseRad: number;
  exposureS: number;
}

export interface Swung {
  curve: Curve;
  blurM: (fromTipM: number) => number;
  /** Through the exposure, at even times. */
  moments: (count: number) => Curve[];
}

export function swungCurve(blank: TrueBlank, load: TrueLoad, swing: Swing): Swung {
  const still = trueCurve(blank, load);
  const pulled = modeOf(blank, load, still);
  const mostM = wayOf(still, pulled(1), 0);
  const at = (share: number) => pulled((share * swing.amplitudeM) / mostM);
  const turn = 0.5 * radPerS(blank, load, still) * swing.exposureS;
  const seenAt = (by: number) => at(Math.sin(swing.phaseRad + by * turn));
  const [first, curve, last] = [-1, 0, 1].map(seenAt);
  const moments = (count: number) => Array.from({ length: count }, (_, i) => seenAt((2 * i + 1) / count - 1));
  return { curve, moments, blurM: (fromTipM) => Math.max(...wayBetween(first, curve, last, fromTipM)) };
}

/** Its ends and its middle: a swing that turns within the exposure. */
function wayBetween(first: Curve, middle: Curve, last: Curve, fromTipM: number): number[] {
  return [wayOf(first, last, fromTipM), wayOf(first, middle, fromTipM), wayOf(middle, last, fromTipM)];
}

/** The curve under `size` times the mode's pulls; 1 moves the tip by some millimetres. */
function modeOf(blank: TrueBlank, load: TrueLoad, still: Curve): (size: number) => Curve {
  const count = 12;
  const pieceM = load.clampFromTipM / count;
  const stations = Array.from({ length: count }, (_, k) => (k + 0.5) * pieceM);
  const tipKg = load.hung.reduce((sum, { massKg }) => sum + massKg, 0);
  let shape = (fromTipM: number) => (1 - fromTipM / load.clampFromTipM) ** 2;
  let pulled = (_: number) => still;
  for (let round = 0; round < 4; round++) {
    const way = shape;
    const pulls = [
      { fromTipM: 0, massKg: tipKg },
      ...stations.map((fromTipM) => ({ fromTipM, massKg: blank.kgPerM(fromTipM) * pieceM * way(fromTipM) })),
    ];
    pulled = (size) =>
      trueCurve(blank, {
        ...load,
        hung: [
          ...load.hung,
          ...pulls.map(({ fromTipM, massKg }) => ({ fromTipM, massKg: 0.02 * size * massKg })),
        ],
      });
    const moved = pulled(1);
    shape = (fromTipM) => wayOf(still, moved, fromTipM) / wayOf(still, moved, 0);
  }
  return pulled;
}

function wayOf(a: Curve, b: Curve, fromTipM: number): number {
  const [from, to] = [placeOn(a, fromTipM), placeOn(b, fromTipM)];
  return Math.hypot(to.xM - from.xM, to.yM - from.yM);
}

/**
 * ω² = g/δ of a mass that hangs by δ; of a bare uniform blank 12.36/8 times that (ω = 3.516 √(EI/µL⁴), δ = µgL⁴/8EI,
 * from memory).
 */
function radPerS(blank: TrueBlank, load: TrueLoad, still: Curve): number {
  const straight = -placeOn(still, 0).yM + Math.sin(load.buttAngleRad) * blank.lengthM;
  const bare = load.hung.length === 0 ? 12.36 / 8 : 1;
  return Math.sqrt((bare * 9.80665) / Math.max(0.01, straight));
}
