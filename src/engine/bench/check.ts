import { assembleBlank } from './assemble.ts';
import type { Bench } from './bench.ts';
import { type BenchFinding, doubtAt, stopAt } from './bench-finding.ts';
import { checkDiameters } from './check-diameters.ts';
import { checkSections } from './check-sections.ts';
import { checkSetups } from './check-setups.ts';

/**
 * What makes no sense, or looks like a slip, in what was measured. Paths are those of the record:
 * `collection/row/field`. Where a `stop` stands on the sections, nothing that hangs on their stations is
 * looked at.
 */
export function checkBench(bench: Bench): BenchFinding[] {
  if (bench.sections.length === 0) {
    return [stopAt('sections', 'bench/empty', {})];
  }
  const sections = checkSections(bench);
  if (sections.some(({ severity }) => severity === 'stop')) return sections;
  const blank = assembleBlank(bench.sections);
  return [
    ...sections,
    ...checkDiameters(bench, blank),
    ...checkSetups(bench, blank),
    ...checkHandle(bench, blank.lengthM),
    ...checkStrainLimits(bench),
  ];
}

function checkHandle({ handle }: Bench, lengthM: number): BenchFinding[] {
  const { gripFrontFromButtM, reelFromButtM } = handle;
  const gripM = gripFrontFromButtM;
  if (gripM >= 0.8 * lengthM) {
    return [stopAt('handle/-/gripFront', 'bench/grip-over-blank', { gripM, lengthM })];
  }
  if (reelFromButtM > gripM) {
    return [doubtAt('handle/-/reelFromButt', 'bench/reel-ahead-of-grip', { reelM: reelFromButtM, gripM })];
  }
  return [];
}

function checkStrainLimits({
  strainCautionPercent: caution,
  strainStopPercent: limit,
}: Bench): BenchFinding[] {
  if (caution === undefined || limit === undefined || caution <= limit) return [];
  const values = { cautionPercent: caution, limitPercent: limit };
  return [doubtAt('blank/-/strainCautionPercent', 'bench/strain-limits', values)];
}
