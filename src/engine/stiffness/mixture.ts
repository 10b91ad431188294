/**
 * What kinds of blank the readings leave possible: smooth ones and rough ones, each with a place that no taper
 * explains or without. A kind is the fit's linear model at its answer (likelihood.ts) under a belief of its own,
 *
 *   y = D z + N v + ε,   z = m + g + φ(s),   g ~ N(0, K_r)
 *
 * r how rough, φ one of the shapes of local-softness.ts or 0. Its weight is how common it is believed to be times its
 * evidence N(y; D m + D ψ, S_r), S_r = D K_r Dᵀ + I + N Nᵀ. Drops are nearly linear in the compliance e^-z, so a shape
 * enters them as ψ = 1 - e^-φ. One normal spread for all blanks would be too wide for the many that are smooth and
 * too narrow for the few that are not.
 */
import { factorCholesky, logDeterminant, solveLower } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import type { LinearReadings } from './likelihood.ts';
import { type LocalShape, localShapes } from './local-softness.ts';
import { commonRoughness, covarianceAt, type Roughness, type StiffnessPrior } from './prior.ts';
import type { Rows } from './rows.ts';

interface MixtureBelief {
  roughness: readonly number[];
  /** ln r ~ N(middle, sigma²) beforehand. */
  middle: number;
  sigma: number;
}
/**
 * Most blanks are smoother than the waves that stiffnessBelief allows; a few are rougher. Tuned on simulated benches,
 * docs/calibration.md.
 */
const mixtureBelief: MixtureBelief = {
  roughness: [0.15, 0.25, 0.4, 0.6, 0.9, 1.35, 2],
  middle: -0.45,
  sigma: 0.8,
};
/** How a series' blanks differ is known: as rough as this one's fit found it, and nothing local. */
function seriesBelief(ownRoughness: number): MixtureBelief {
  return { roughness: [ownRoughness], middle: 0, sigma: 1 };
}

export interface Mixture {
  readonly readings: LinearReadings;
  /** Of ln EI at the fine rows, before any reading. */
  readonly mean: Float64Array;
  readonly rough: readonly RoughKind[];
  readonly shapes: readonly LocalShape[];
  readonly kinds: readonly BlankKind[];
}
/** All blanks as rough as each other. */
export interface RoughKind {
  /** K_r, 81 × 81. */
  covariance: Float64Array;
  /** Cholesky factor of S_r, and K_r Dᵀ, 81 × count. */
  evidence: Float64Array;
  gain: Float64Array;
}
export interface BlankKind {
  rough: number;
  /** Index into `shapes`; left out: none. */
  shape?: number;
  /** All together 1. */
  weight: number;
}

export function mixtureOf(
  readings: LinearReadings,
  prior: StiffnessPrior,
  { fine }: Rows,
  fit: { lengthM: number; roughness: Roughness },
): Mixture {
  const belief = prior.ofSeries ? seriesBelief(fit.roughness.waves) : mixtureBelief;
  const shapes = prior.ofSeries ? [] : localShapes(fine, fit.lengthM);
  const rough = belief.roughness.map((waves) =>
    roughKind({ waves, short: shortFor(waves, fit.roughness) }, prior, readings),
  );
  const kinds = weighed(readings, prior.mean, shapes, rough, belief);
  return { readings, mean: prior.mean, rough, shapes, kinds };
}

/** As rough as the waves, unless pictures of one stand told the short irregularities of this blank (roughness.ts). */
function shortFor(waves: number, { short }: Roughness): number {
  return short === commonRoughness.short ? waves : short;
}

function roughKind(
  roughness: Roughness,
  prior: StiffnessPrior,
  { count, design, covariance: noise }: LinearReadings,
): RoughKind {
  const width = prior.mean.length;
  const covariance = covarianceAt(prior, roughness);
  const gain = new Float64Array(width * count);
  for (let i = 0; i < width; i++) {
    const row = covariance.subarray(i * width, (i + 1) * width);
    gain.set(rowsTimes(design, row), i * count);
  }
  const evidence = noise.slice();
  for (let d = 0; d < count; d++) {
    for (let i = 0; i < width; i++) {
      const slope = design[d * width + i];
      for (let e = 0; e <= d; e++) evidence[d * count + e] += slope * gain[i * count + e];
    }
  }
  if (!factorCholesky(evidence, count)) throw new Error('readings without any scatter of their own');
  return { covariance, evidence, gain };
}

function weighed(
  readings: LinearReadings,
  mean: Float64Array,
  shapes: readonly LocalShape[],
  rough: readonly RoughKind[],
  { roughness, middle, sigma }: MixtureBelief,
): BlankKind[] {
  const { count, design } = readings;
  const off = fromMean(readings, mean);
  const plainShare = 1 - shapes.reduce((sum, { share }) => sum + share, 0);
  const seen = shapes.map(({ change }) => rowsTimes(design, asSeen(change)));
  const logs = rough.flatMap(({ evidence }, r): (BlankKind & { log: number })[] => {
    const e = whitened(evidence, off);
    const believed = -0.5 * ((Math.log(roughness[r]) - middle) / sigma) ** 2;
    const plain = believed - 0.5 * (logDeterminant(evidence, count) + dot(e, e));
    const local = seen.map((by, shape) => {
      const p = whitened(evidence, by);
      const log = plain + Math.log(shapes[shape].share) + dot(p, e) - 0.5 * dot(p, p);
      return { rough: r, shape, log, weight: 0 };
    });
    return [{ rough: r, log: plain + Math.log(plainShare), weight: 0 }, ...local];
  });
  return normalised(logs);
}

/** The least likely, one in two hundred together, are left out. */
function normalised(logs: (BlankKind & { log: number })[]): BlankKind[] {
  const most = logs.reduce((largest, { log }) => Math.max(largest, log), Number.NEGATIVE_INFINITY);
  const all = logs.map(({ log, ...kind }) => ({ ...kind, weight: Math.exp(log - most) }));
  all.sort((a, b) => b.weight - a.weight);
  const total = all.reduce((sum, { weight }) => sum + weight, 0);
  let sum = 0;
  const kept = all.filter(({ weight }) => {
    const wanted = sum < 0.995 * total;
    if (wanted) sum += weight;
    return wanted;
  });
  return kept.map((kind) => ({ ...kind, weight: kind.weight / sum }));
}

/** y - D m. */
export function fromMean({ design, observed }: LinearReadings, mean: Float64Array): Float64Array {
  return rowsTimes(design, mean).map((value, d) => observed[d] - value);
}

/** The change of ln EI that would move the drops as far, were they linear in it. */
export function asSeen(change: Float64Array): Float64Array {
  return change.map((by) => 1 - Math.exp(-by));
}

function whitened(factor: Float64Array, values: Float64Array): Float64Array {
  const out = new Float64Array(values.length);
  solveLower(factor, values.length, values, out);
  return out;
}

/** A matrix of as many columns as `x` is long, times x. */
export function rowsTimes(rows: Float64Array, x: Float64Array): Float64Array {
  const width = x.length;
  const out = new Float64Array(rows.length / width);
  for (let i = 0; i < out.length; i++) {
    let sum = 0;
    for (let k = 0; k < width; k++) sum += rows[i * width + k] * x[k];
    out[i] = sum;
  }
  return out;
}
