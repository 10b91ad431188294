/** The marks that stand on the rod: screen, report and papers read it with these. */
import type { AssembledBlank } from '../bench/assemble.ts';
import type { Bench } from '../bench/bench.ts';
import { commonMarks } from '../kinds/common-build.ts';
import type { Choices } from './choices.ts';
import type { LayoutQuestion } from './layout-question.ts';

export interface StandingMarks {
  /** The builder's own; while he has none the start's, or where that makes none for these guides, even ones. */
  are: 'own' | 'start' | 'spread';
  fromTipM: readonly number[];
}

interface RodToMark {
  bench: Bench;
  choices: Choices;
  blank: AssembledBlank;
}

export function standingMarks(
  rod: RodToMark,
  { startFromTipM, ownFromTipM }: Pick<LayoutQuestion, 'startFromTipM' | 'ownFromTipM'>,
): StandingMarks {
  if (ownFromTipM) return { are: 'own', fromTipM: ownFromTipM };
  const freeM = rod.blank.lengthM - rod.bench.handle.gripFrontFromButtM;
  const fits = startFromTipM.length === rod.choices.guides.length && climbs(startFromTipM, freeM);
  return fits ? { are: 'start', fromTipM: startFromTipM } : { are: 'spread', fromTipM: evenMarks(rod) };
}

/** Between common ends. */
function evenMarks({ bench, choices: { guides, rodKind }, blank }: RodToMark): number[] {
  const ends = commonMarks(rodKind, blank.lengthM, bench.handle);
  const step = (ends.strippingFromTipM - ends.firstFromTipM) / (guides.length - 1);
  return guides.map((_, index) => ends.firstFromTipM + index * step);
}

/** Rings nearer to each other than this cannot be bent apart. */
export const closestRingsM = 2e-3;

/** Whether a rod can be bent with them: they climb from the tip to less than the grip. */
export function climbs(fromTipM: readonly number[], freeM: number): boolean {
  return [...fromTipM, freeM].every((at, i, all) => at - (all[i - 1] ?? 0) >= closestRingsM);
}
