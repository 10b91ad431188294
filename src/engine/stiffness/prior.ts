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
import type { FitBlank } from './request.ts';
import type { Rows } from './rows.ts';
import type { GaussianPrior } from './unknowns.ts';

/** A part of g: standard deviation of ln EI, and its length scale. */
export interface Roughness {
  sigma: number;
  lengthM: number;
}

export interface StiffnessBelief {
  level: number;
  levelSigma: number;
  power: number;
  powerSigma: number;
  roughness: readonly Roughness[];
}

export function stiffnessPrior(blank: FitBlank, rows: Rows, belief: StiffnessBelief): GaussianPrior {
  const at = rows.fine;
  const x = Float64Array.from(at, (s) => Math.log(outsideDiameterAt(blank, s) / 0.007));
  const mean = x.map((xi) => belief.level + belief.power * xi);
  const covariance = gaussianCovariance(at, belief.roughness);
  addTaper(covariance, x, belief.levelSigma, belief.powerSigma);
  for (const zone of knownZones(blank)) addZone(mean, covariance, at, zone);
  return { mean, covariance };
}

/** Beliefs about stiffness for what was measured; the roughness scale is a factor on all its parts. */
export function stiffnessBelief(blank: FitBlank, roughnessScale: number): StiffnessBelief {
  const measured = blank.diameters?.length ?? 0;
  const lengthM = blank.lengthM;
  const scale = roughnessScale * (measured >= 2 ? 1 : 1.5);
  return {
    level: 1.6,
    levelSigma: measured > 0 ? 0.8 : 1.2,
    power: 3.5,
    powerSigma: measured >= 2 ? 0.4 : 0.8,
    roughness: [
      { sigma: 0.25 * scale, lengthM: 0.35 * lengthM },
      { sigma: 0.2 * scale, lengthM: 0.12 * lengthM },
      { sigma: 0.1, lengthM: 0.035 },
    ],
  };
}

export function massPrior(blank: FitBlank, rows: Rows): GaussianPrior {
  const at = rows.coarse;
  const x = Float64Array.from(at, (s) => Math.log(outsideDiameterAt(blank, s) / 0.007));
  const covariance = gaussianCovariance(at, [{ sigma: 0.1, lengthM: 0.3 * blank.lengthM }]);
  addTaper(covariance, x, 0.5, 0.35);
  return { mean: x.map((xi) => Math.log(0.014) + 1.3 * xi), covariance };
}

export function restPrior(blank: FitBlank, rows: Rows, sigmaPerM: number): GaussianPrior {
  if (!(sigmaPerM > 0)) return { mean: new Float64Array(0), covariance: new Float64Array(0) };
  const covariance = gaussianCovariance(rows.coarse, [
    { sigma: 0.85 * sigmaPerM, lengthM: 0.3 * blank.lengthM },
    { sigma: 0.5 * sigmaPerM, lengthM: 0.12 * blank.lengthM },
  ]);
  return { mean: new Float64Array(rows.coarse.length), covariance };
}

export function independentPrior(sigmas: readonly number[]): GaussianPrior {
  const n = sigmas.length;
  const covariance = new Float64Array(n * n);
  for (let i = 0; i < n; i++) covariance[i * n + i] = sigmas[i] * sigmas[i];
  return { mean: new Float64Array(n), covariance };
}

/** Squared-exponential parts, and a trace of independent roughness that keeps the matrix definite. */
function gaussianCovariance(at: Float64Array, parts: readonly Roughness[]): Float64Array {
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

/** Ferrules that were stated, else the overlaps of the sections. */
function knownZones({ stiffZones, sections }: FitBlank): readonly Zone[] {
  if (stiffZones) return stiffZones;
  const ordered = [...(sections ?? [])].sort((a, b) => a.fromTipM - b.fromTipM);
  return ordered
    .slice(1)
    .map((section, i) => ({ fromTipM: section.fromTipM, toTipM: ordered[i].toTipM }))
    .filter(({ fromTipM, toTipM }) => toTipM - fromTipM > 1e-3);
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
