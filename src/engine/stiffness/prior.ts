/**
 * What is believed before a reading is taken.
 *
 *   ln EI(s) = a + p ln(OD/7 mm) + g(s)      a, p uncertain; g a Gaussian process of several length scales
 *   ln µ(s)  = b + q ln(OD/7 mm) + h(s)
 *   κ0(s)    = a Gaussian process of the stated standard deviation
 *
 * A thin tube has EI = (π/8) E OD³ t and µ = π ρ OD t; the wall t grows towards the butt, so p lies between 3
 * and 4 and q near p - 2. Modulus and wall are not known, so the level is left wide. g carries what a taper
 * cannot: long waves of wall and lay-up, and short irregularities (a ferrule, a soft zone), which readings
 * hardly see and which therefore stay in the band. Levels and spreads: judgement from published dimensions of
 * carbon and glass blanks; where no diameter was measured a common taper stands in, and every spread grows.
 */
import { outsideDiameterAt } from './diameters.ts';
import type { FitBlank, SeriesPrior } from './request.ts';
import type { Rows } from './rows.ts';
import { type GaussianPrior, gaussianPrior } from './unknowns.ts';

/** Standard deviations, and the lengths over which the parts of g keep their value. */
export const stiffnessBelief = {
  level: 1.6,
  levelSigma: { measured: 0.8, unmeasured: 1.2 },
  power: 3.5,
  powerSigma: { measured: 0.4, unmeasured: 0.8 },
  long: { sigma: 0.25, perLength: 0.35 },
  middle: { sigma: 0.2, perLength: 0.12 },
  /** Where it is not said which places are doubled, ferrules count among the irregularities. */
  short: { sigma: { doubledTold: 0.08, untold: 0.12 }, lengthM: 0.045 },
  /** On the long and middle parts where no taper was measured. */
  unmeasuredRoughness: 1.5,
} as const;

/**
 * A bow belongs to a section more than to the blank, so it keeps its value over about a sixth of the length; and some
 * blanks are bowed far more than most, for which a normal spread is taken so much wider than stated.
 */
const bowBelief = { perLength: 0.17, tails: 1.3 } as const;

export interface StiffnessPrior {
  mean: Float64Array;
  /** Covariance of level, taper and ferrules. */
  fixed: Float64Array;
  /** Covariance of the long and middle waves; counts with the square of the roughness factor. */
  smooth: Float64Array;
  /** Covariance of the short irregularities; counts with the square of their own factor. */
  short: Float64Array;
  /** Learnt from measured blanks. */
  ofSeries?: true;
}

export function stiffnessPrior(blank: FitBlank, rows: Rows): StiffnessPrior {
  if (blank.series) return seriesStiffnessPrior(blank.series, rows);
  const { level, levelSigma, power, powerSigma, long, middle, short } = stiffnessBelief;
  const measured = blank.diameters?.length ?? 0;
  const at = rows.fine;
  const x = Float64Array.from(at, (s) => Math.log(outsideDiameterAt(blank, s) / 0.007));
  const mean = x.map((xi) => level + power * xi);
  const doubled = knownZones(blank);
  const sigma = doubled ? short.sigma.doubledTold : short.sigma.untold;
  const fixed = new Float64Array(at.length ** 2);
  addTaper(
    fixed,
    x,
    measured > 0 ? levelSigma.measured : levelSigma.unmeasured,
    measured > 1 ? powerSigma.measured : powerSigma.unmeasured,
  );
  for (const zone of doubled ?? []) addZone(mean, fixed, at, zone);
  const scale = measured > 1 ? 1 : stiffnessBelief.unmeasuredRoughness;
  const smooth = gaussianCovariance(at, [
    { sigma: scale * long.sigma, lengthM: long.perLength * blank.lengthM },
    { sigma: scale * middle.sigma, lengthM: middle.perLength * blank.lengthM },
  ]);
  return { mean, fixed, short: gaussianCovariance(at, [{ ...short, sigma }]), smooth };
}

/** The blanks' differences count with the roughness factor, so that an odd one may move further from the mean. */
function seriesStiffnessPrior({ mean, shared, between }: SeriesPrior, { fine }: Rows): StiffnessPrior {
  const n = fine.length;
  const fixed = Float64Array.from(shared);
  // Rounding must not make the sum indefinite: a hundredth of a percent of independent scatter.
  for (let i = 0; i < n; i++) fixed[i * n + i] += 1e-8 + 1e-4 * between[i * n + i];
  return {
    mean: Float64Array.from(mean),
    fixed,
    smooth: Float64Array.from(between),
    short: new Float64Array(n * n),
    ofSeries: true,
  };
}

/** How rough a blank is: factors on the common roughness of long and middle waves, and of short irregularities. */
export interface Roughness {
  waves: number;
  short: number;
}
export const commonRoughness: Roughness = { waves: 1, short: 1 };

export function withRoughness(prior: StiffnessPrior, roughness: Roughness): GaussianPrior {
  return gaussianPrior(prior.mean, covarianceAt(prior, roughness));
}

export function covarianceAt({ fixed, smooth, short }: StiffnessPrior, roughness: Roughness): Float64Array {
  const [waves, own] = [roughness.waves ** 2, roughness.short ** 2];
  return fixed.map((value, i) => value + waves * smooth[i] + own * short[i]);
}

export function massPrior(blank: FitBlank, rows: Rows): GaussianPrior {
  const at = rows.coarse;
  const x = Float64Array.from(at, (s) => Math.log(outsideDiameterAt(blank, s) / 0.007));
  const covariance = gaussianCovariance(at, [{ sigma: 0.1, lengthM: 0.3 * blank.lengthM }]);
  addTaper(covariance, x, 0.5, 0.35);
  return gaussianPrior(
    x.map((xi) => Math.log(0.014) + 1.3 * xi),
    covariance,
  );
}

export function restPrior(blank: FitBlank, rows: Rows, sigmaPerM: number): GaussianPrior {
  if (!(sigmaPerM > 0)) return gaussianPrior(new Float64Array(0), new Float64Array(0));
  const covariance = gaussianCovariance(rows.coarse, [
    { sigma: bowBelief.tails * sigmaPerM, lengthM: bowBelief.perLength * blank.lengthM },
  ]);
  return gaussianPrior(new Float64Array(rows.coarse.length), covariance);
}

export function independentPrior(sigmas: readonly number[]): GaussianPrior {
  const n = sigmas.length;
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) factor[i * n + i] = sigmas[i];
  return { mean: new Float64Array(n), factor };
}

/** Squared-exponential parts, and a trace of independent roughness that keeps the matrix definite. */
export function gaussianCovariance(
  at: Float64Array,
  parts: readonly { sigma: number; lengthM: number }[],
): Float64Array {
  const n = at.length;
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (const { sigma, lengthM } of parts) {
        const d = (at[i] - at[j]) / lengthM;
        sum += sigma * sigma * (Math.exp(-0.5 * d * d) + (i === j ? 1e-5 : 0));
      }
      covariance[i * n + j] = sum;
      covariance[j * n + i] = sum;
    }
  }
  return covariance;
}

function addTaper(covariance: Float64Array, x: Float64Array, levelSigma: number, powerSigma: number): void {
  const n = x.length;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      covariance[i * n + j] += levelSigma ** 2 + powerSigma ** 2 * x[i] * x[j];
    }
  }
}

interface Zone {
  fromTipM: number;
  toTipM: number;
  ratio?: number;
}

/** Ferrules that were stated, and overlaps of sections where none was; undefined where neither was told. */
export function knownZones({ stiffZones, sections = [] }: FitBlank): Zone[] | undefined {
  if (!stiffZones && sections.length === 0) return undefined;
  const stated = stiffZones ?? [];
  const ordered = [...sections].sort((a, b) => a.fromTipM - b.fromTipM);
  const overlaps = ordered
    .slice(1)
    .map((section, i) => ({
      fromTipM: section.fromTipM,
      toTipM: ordered[i].toTipM,
    }))
    .filter(({ fromTipM, toTipM }) => toTipM - fromTipM > 1e-3)
    .filter((overlap) => !stated.some((z) => z.fromTipM < overlap.toTipM && z.toTipM > overlap.fromTipM));
  return [...stated, ...overlaps];
}

/** A doubled zone: the stated ratio within a tenth, or somewhere between hardly and twice as stiff. */
function addZone(mean: Float64Array, covariance: Float64Array, at: Float64Array, zone: Zone): void {
  const amount = zone.ratio === undefined ? 0.4 : Math.log(zone.ratio);
  const sigma = zone.ratio === undefined ? 0.3 : 0.1;
  const edgeM = 0.01;
  const shape = at.map((s) => {
    const inside = Math.min(s - zone.fromTipM, zone.toTipM - s);
    return 1 / (1 + Math.exp(-inside / edgeM));
  });
  const n = at.length;
  for (let i = 0; i < n; i++) {
    mean[i] += amount * shape[i];
    for (let j = 0; j < n; j++) covariance[i * n + j] += sigma * sigma * shape[i] * shape[j];
  }
}
