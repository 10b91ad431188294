import type { Change } from '../../../record/operation.ts';

export type JointKind = 'sleeve' | 'spigot' | 'put-in' | 'put-over';

export const jointNames: Record<JointKind, string> = {
  sleeve: 'sleeve: upper over lower',
  spigot: 'spigot: a plug glued in',
  'put-in': 'put-in: upper into lower',
  'put-over': 'put-over: a sleeve of its own',
};

/** The rows of a blank of `count` sections, tip first, joined alike; nothing is measured yet. */
export function newSections(count: number, joint: JointKind, newRowId: () => string): Change[] {
  return Array.from({ length: count }, (_, index) => index).flatMap((index) => {
    const id = newRowId();
    const changes: Change[] = [
      { path: ['sections', id, 'order'], value: index },
      { path: ['sections', id, 'name'], value: sectionName(index, count) },
    ];
    if (index < count - 1) changes.push({ path: ['sections', id, 'joint'], value: joint });
    return changes;
  });
}

/** `tip`, `second`, `third`, … `butt`, as the trade counts them from the tip. */
function sectionName(index: number, count: number): string {
  if (count === 1) return 'blank';
  if (index === 0) return 'tip';
  if (index === count - 1) return 'butt';
  return ['second', 'third', 'fourth', 'fifth', 'sixth'][index - 1] ?? `section ${index + 1}`;
}
