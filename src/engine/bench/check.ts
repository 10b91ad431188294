import { assembleBlank } from './assemble.ts';
import type { Bench } from './bench.ts';
import { type BenchFinding, doubt, stop } from './bench-finding.ts';
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
    return [
      stop(
        'sections',
        'The bench is empty: add the sections of the blank, from the tip down, each with its length.',
      ),
    ];
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
  if (gripFrontFromButtM >= 0.8 * lengthM) {
    return [stop('handle/-/gripFront', 'The grip would reach over most of the blank; check its length.')];
  }
  if (reelFromButtM > gripFrontFromButtM) {
    return [
      doubt(
        'handle/-/reelFromButt',
        'The reel stands in front of the grip; both are measured from the butt end.',
      ),
    ];
  }
  return [];
}

function checkStrainLimits({
  strainCautionPercent: caution,
  strainStopPercent: limit,
}: Bench): BenchFinding[] {
  if (caution === undefined || limit === undefined || caution <= limit) return [];
  const message = `The strain to warn at (${caution} %) lies above the one to stop at (${limit} %); swap them.`;
  return [doubt('blank/-/strainCautionPercent', message)];
}
