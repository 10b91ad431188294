/** What other numbers of guides could do, taken into what to do first. */
import type { NextMove } from './next-move.ts';

/** `placedWorst`: least worst ratio that placing all guides anew reaches. */
export function heedCounts(
  answer: NextMove,
  { placedWorst, fewest }: { placedWorst: number | undefined; fewest: number | undefined },
): NextMove {
  const reached = Math.min(
    answer.move?.after.ratio ?? answer.now.ratio,
    placedWorst ?? Number.POSITIVE_INFINITY,
  );
  if (fewest === undefined || answer.code === 'no-bend' || answer.code === 'keep' || reached <= 1)
    return answer;
  return { ...answer, code: 'more-guides', fewest };
}
