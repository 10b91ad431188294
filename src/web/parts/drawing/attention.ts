/**
 * Which rings are marked in the one strong colour: those at the worst reading, where it is beyond its limit. Ring 0
 * is the tip-top. All other readings beyond a limit are told by the strips and the table.
 */
import { criterionOf } from '../../../engine/layout/criteria.ts';
import type { WorstPlace } from '../../../engine/layout/worst.ts';

export function ringsAt(worst: WorstPlace): Set<number> {
  const { metric, index, ratio } = worst;
  if (!(ratio > 1) || index < 0) return new Set();
  return new Set(criterionOf(metric).at === 'ring' ? [index] : [index, index + 1]);
}
