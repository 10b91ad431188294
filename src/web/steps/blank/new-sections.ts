import type { JointKind } from '../../../engine/bench/bench.ts';
import type { SectionPart } from '../../../record/fields/blank.ts';
import type { Change } from '../../../record/operation.ts';

/** The rows of a blank of `count` sections, tip first, joined alike; nothing is measured yet. */
export function newSections(count: number, joint: JointKind, newRowId: () => string): Change[] {
  return Array.from({ length: count }, (_, index) => index).flatMap((index) => {
    const id = newRowId();
    const part = sectionPart(index, count);
    const changes: Change[] = [{ path: ['sections', id, 'order'], value: index }];
    if (part) changes.push({ path: ['sections', id, 'part'], value: part });
    if (index < count - 1) changes.push({ path: ['sections', id, 'joint'], value: joint });
    return changes;
  });
}

/** As the trade counts them from the tip. */
function sectionPart(index: number, count: number): SectionPart | undefined {
  if (count === 1) return 'blank';
  if (index === 0) return 'tip';
  if (index === count - 1) return 'butt';
  return (['second', 'third', 'fourth', 'fifth', 'sixth'] as const)[index - 1];
}
