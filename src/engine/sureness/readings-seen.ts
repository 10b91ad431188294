/**
 * What readings not yet taken would show, to first order about the fitted blank. The posterior is
 * u = û + F⁻ᵀ ξ with ξ standard normal (stiffness/posterior.ts); a reading is r = r̂ + w·ξ + t τ + noise, with
 * w = F⁻¹ (∂r/∂u)ᵀ, τ the tilt of a set-up still to be made.
 */

import { solveLower } from '../numerics/cholesky.ts';
import { commonSigmaM } from '../stiffness/bench-model.ts';
import type { Prediction } from '../stiffness/clamp-derivatives.ts';
import { clampModel } from '../stiffness/clamp-elements.ts';
import { predictDrops } from '../stiffness/clamp-model.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import { spanModel } from '../stiffness/span-elements.ts';
import { predictSags } from '../stiffness/span-model.ts';
import { predictSwing, swingModelShare } from '../stiffness/swing-data.ts';
import { rowByStandard, valuesOf } from '../stiffness/unknowns.ts';
import type { Offer, SetupOnOffer } from './reading-options.ts';
import type { SpanOnOffer } from './span-offers.ts';
import type { SwingOnOffer } from './swing-offers.ts';

export interface SeenReading {
  /** By ξ, in metres of drop (of swings: ln of the frequency) per standard deviation. */
  bySpread: Float64Array;
  /** Per standard deviation of the new set-up's tilt; 0 in the set-up that stands, whose tilt is in ξ. */
  byTiltM: number;
  sigmaM: number;
}

/** One per reading on offer; undefined where some load of it finds no bend. */
export function readingsSeen(posterior: Posterior, offer: Offer): SeenReading[] | undefined {
  if (offer.kind === 'swings') return swingSeen(posterior, offer);
  return offer.kind === 'span' ? sagsSeen(posterior, offer) : dropsSeen(posterior, offer);
}

/** Two supports have no tilt. */
function sagsSeen(
  { unknowns, rows, factor, u, lengthM }: Posterior,
  { setup }: SpanOnOffer,
): SeenReading[] | undefined {
  const n = unknowns.size;
  const z = new Float64Array(n);
  valuesOf(unknowns, u, z);
  const out = emptyRows(setup.tests.length, n);
  if (!predictSags(spanModel(setup, 0, lengthM, rows), unknowns, z, 0, out)) return undefined;
  return setup.tests.map(({ sigmaM = commonSigmaM }, d) => {
    const bySpread = out.jacobian.slice(d * n, (d + 1) * n);
    rowByStandard(unknowns, bySpread);
    solveLower(factor, n, bySpread, bySpread);
    return { bySpread, byTiltM: 0, sigmaM };
  });
}

/** In ln of the frequency instead of metres; there is no tilt. */
function swingSeen(
  { unknowns, rows, factor, u }: Posterior,
  { clampFromTipM, hz, sigmaHz }: SwingOnOffer,
): SeenReading[] | undefined {
  const n = unknowns.size;
  const z = new Float64Array(n);
  valuesOf(unknowns, u, z);
  const out = emptyRows(1, n);
  if (!predictSwing({ clampFromTipM }, rows, unknowns, z, 0, out)) return undefined;
  const bySpread = out.jacobian;
  rowByStandard(unknowns, bySpread);
  solveLower(factor, n, bySpread, bySpread);
  return [{ bySpread, byTiltM: 0, sigmaM: Math.hypot(sigmaHz / hz, swingModelShare) }];
}

function dropsSeen(posterior: Posterior, { setup, standing }: SetupOnOffer): SeenReading[] | undefined {
  const { unknowns, rows, factor, u, lengthM } = posterior;
  const n = unknowns.size;
  // the tilt of a set-up still to be made stands behind all other unknowns
  const tilt = standing === undefined ? { ...unknowns.tilt, start: n } : unknowns.tilt;
  const z = new Float64Array(n + 1);
  valuesOf(unknowns, u, z);
  const sigmas = setup.tests.flatMap(({ readings, sigmaM = commonSigmaM }) => readings.map(() => sigmaM));
  const out = emptyRows(sigmas.length, n + 1);
  const model = clampModel(setup, standing ?? 0, lengthM, rows);
  if (!predictDrops(model, { ...unknowns, tilt }, z, 0, out)) return undefined;
  return sigmas.map((sigmaM, d) => {
    const bySpread = out.jacobian.slice(d * (n + 1), d * (n + 1) + n);
    rowByStandard(unknowns, bySpread);
    solveLower(factor, n, bySpread, bySpread);
    return {
      bySpread,
      byTiltM: out.jacobian[d * (n + 1) + n] * (setup.tiltSigmaRad ?? commonTiltRad),
      sigmaM,
    };
  });
}

/** 1°, as the fit takes it where nothing is stated. */
const commonTiltRad = 0.0175;

function emptyRows(count: number, size: number): Prediction {
  return {
    value: new Float64Array(count),
    jacobian: new Float64Array(count * size),
    size,
    stationSlope: new Float64Array(count),
    loadSlope: new Float64Array(count),
  };
}
