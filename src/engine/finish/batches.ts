/**
 * How much to mix, in how many batches.
 *
 * A part can be measured to ± one division; for the ratio to be off by no more than 4 % the smaller part must be at
 * least 25 divisions (0.1 ml divisions: 2.5 ml, the usual least). A batch lasts its pot life, of which brushing may
 * use two thirds. Both shares are common practice, no source. Mass of a part = volume × its density.
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
  /** Shares of the two parts as the data sheet gives them, by volume or by mass. */
  partA: number;
  partB: number;
  mixBy: 'volume' | 'mass';
  /** g/ml; needed by mass. */
  densityA?: number;
  densityB?: number;
  /** Smallest division of the syringe (ml) or the scale (g). */
  measureStep: number;
  rules: BatchRules;
}
export interface BatchRules {
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
  /** What a batch holds, ml; undefined by mass without densities. */
  batchMl: number | undefined;
  /** The rod needs less than can be measured truly: the rest is thrown away. */
  leastRules: boolean;
}

/** Undefined with a finding where a part, a division or a time is missing or nothing. */
export function planBatches(input: BatchInput): { plan?: BatchPlan; findings: BenchFinding[] } {
  const findings = batchFindings(input);
  if (findings.length > 0) return { findings };
  const { partA, partB, potLifeMin, minutesPerWrap, wraps, mixBy, measureStep, rules } = input;
  const perBatch = Math.max(1, Math.floor(((rules.brushedPercent / 100) * potLifeMin) / minutesPerWrap));
  const batches = Math.max(1, Math.ceil(wraps / perBatch));
  const least = ((100 / rules.ratioErrorPercent) * measureStep * (partA + partB)) / Math.min(partA, partB);
  const wantedMl = (input.neededMl * rules.mixTimes) / batches;
  const wanted = mixBy === 'volume' ? wantedMl : wantedMl * meanDensity(input);
  const batch = roundUp(Math.max(wanted, least), measureStep);
  const a = (batch * partA) / (partA + partB);
  return {
    findings,
    plan: {
      batches,
      partA: a,
      partB: batch - a,
      unit: mixBy === 'volume' ? 'ml' : 'g',
      batchMl:
        mixBy === 'volume'
          ? batch
          : input.densityA && input.densityB
            ? batch / meanDensity(input)
            : undefined,
      leastRules: least > wanted,
    },
  };
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
  if (input.mixBy === 'mass' && !(input.densityA && input.densityB)) {
    const field = input.densityA ? 'densityB' : 'densityA';
    findings.push(stopAt(`finish/-/${field}`, 'finish/densities-needed', {}));
  }
  return findings;
}

/** g/ml of the mix whose shares are by mass: total mass over total volume. */
function meanDensity({ partA, partB, densityA = 1, densityB = 1 }: BatchInput): number {
  return (partA + partB) / (partA / densityA + partB / densityB);
}

function roundUp(value: number, step: number): number {
  return Math.ceil(value / step - 1e-9) * step;
}
