/**
 * How much to mix, in how many batches.
 *
 * A part can be measured to ± one division; for the ratio to be off by no more than 4 % the smaller part must be at
 * least 25 divisions (0.1 ml divisions: 2.5 ml, the usual least). A batch lasts its pot life, of which brushing may
 * use two thirds. Both shares are common practice, no source. Mass of a part = volume × its density: a ratio by volume
 * measured on a scale, or the other way round, is another ratio.
 */
import { type BenchFinding, stopsOf } from '../bench/bench-finding.ts';
import type { FinishKinds } from './finish-kinds.ts';

export interface BatchInput {
  /** On the rod, this coat; ml. */
  neededMl: number;
  wraps: number;
  minutesPerWrap: number;
  /** At the room's temperature. */
  potLifeMin: number;
  /** Shares of the two parts as the data sheet gives them. */
  partA: number;
  partB: number;
  /** Left out: by volume where it is measured by volume, else nobody knows. */
  ratioBy?: 'volume' | 'mass';
  /** How the builder measures. */
  mixBy: 'volume' | 'mass';
  /** g/ml; needed where ratio or scale go by mass. */
  densityA?: number;
  densityB?: number;
  /** Smallest division of the syringe (ml) or the scale (g). */
  measureStep: number;
  rules: BatchRules;
}
interface BatchRules {
  /** One division may put the ratio off by this much. */
  ratioErrorPercent: number;
  /** Of the pot life, brushing may use this share. */
  brushedPercent: number;
  /** Mixed for what the rod takes: most of a small mix stays in the cup and the brush. */
  mixTimes: number;
}
/** Common practice, no source. */
export const batchRules: BatchRules = { ratioErrorPercent: 4, brushedPercent: 200 / 3, mixTimes: 1.5 };
export interface BatchPlan {
  batches: number;
  /** Of each batch, in ml or g. */
  partA: number;
  partB: number;
  unit: 'ml' | 'g';
  /** What a batch holds, ml. */
  batchMl: number;
  /** Smallest mark of the syringe (ml) or the scale (g) used. */
  measureStep: number;
  /** Where the rod needs less than can be measured truly: marks fine enough for what it needs. */
  finerStep?: number;
}

/** Undefined with a finding where a part, a division or a time is missing or nothing. */
export function planBatches(input: BatchInput): { plan?: BatchPlan; findings: BenchFinding[] } {
  const findings = batchFindings(input);
  if (findings.length > 0) return { findings };
  const { potLifeMin, minutesPerWrap, wraps, mixBy, measureStep, rules } = input;
  const perBatch = Math.max(1, Math.floor(((rules.brushedPercent / 100) * potLifeMin) / minutesPerWrap));
  const batches = Math.max(1, Math.ceil(wraps / perBatch));
  const { a, b, ml } = asMeasured(input);
  const wanted = (input.neededMl * rules.mixTimes) / batches / ml;
  const marksNeeded = 100 / rules.ratioErrorPercent / Math.min(a, b);
  const least = marksNeeded * measureStep;
  const batch = roundUp(Math.max(wanted, least), measureStep);
  return {
    findings,
    plan: {
      batches,
      partA: batch * a,
      partB: batch * b,
      unit: mixBy === 'volume' ? 'ml' : 'g',
      batchMl: batch * ml,
      measureStep,
      ...(least > wanted ? { finerStep: wanted / marksNeeded } : {}),
    },
  };
}

/** Of one ml or gram measured: each part's share, and its volume in ml. */
function asMeasured(input: BatchInput): { a: number; b: number; ml: number } {
  const { partA, partB, mixBy, ratioBy = mixBy, densityA = 1, densityB = 1 } = input;
  const [mlA, mlB] = ratioBy === 'volume' ? [partA, partB] : [partA / densityA, partB / densityB];
  const [a, b] = mixBy === 'volume' ? [mlA, mlB] : [mlA * densityA, mlB * densityB];
  return { a: a / (a + b), b: b / (a + b), ml: (mlA + mlB) / (a + b) };
}

const stopAt = stopsOf<FinishKinds>();

function batchFindings(input: BatchInput): BenchFinding[] {
  const needed = {
    partA: input.partA,
    partB: input.partB,
    measureStep: input.measureStep,
    potLife: input.potLifeMin,
    minutesPerWrap: input.minutesPerWrap,
  };
  const findings = (Object.keys(needed) as (keyof typeof needed)[])
    .filter((what) => !(needed[what] > 0))
    .map((what) => stopAt(`finish/-/${what}`, 'finish/nothing-given', { what, value: needed[what] }));
  if (input.mixBy === 'mass' && !input.ratioBy) {
    findings.push(stopAt('finish/-/ratioBy', 'finish/ratio-by-what', {}));
  }
  const byMass = input.mixBy === 'mass' || input.ratioBy === 'mass';
  if (byMass && !(input.densityA && input.densityB)) {
    const field = input.densityA ? 'densityB' : 'densityA';
    findings.push(stopAt(`finish/-/${field}`, 'finish/densities-needed', {}));
  }
  return findings;
}

function roundUp(value: number, step: number): number {
  return Math.ceil(value / step - 1e-9) * step;
}
