import type { JudgedRepair, JudgedTipRepairs } from '../engine/flow/judged-tip-repair.ts';
import type { WorstPlace } from '../engine/layout/worst.ts';
import { placeInWords } from './criteria.ts';
import { besideLimit, readingInWords } from './next-move.ts';
import type { Writer } from './writer.ts';

/** What to do about the guides of a rod that lost its tip, and why: leaving them beside moving them. */
export function tipRepairInWords(
  { before, leave, move, proposed }: JudgedTipRepairs,
  loadsKg: readonly number[],
  writer: Writer,
): { deed: string; why: string[] } {
  const at = (worst: WorstPlace) => readingInWords(worst, loadsKg, writer);
  const left = `Left as they are, closest to a limit near the tip: ${at(leave.atTip)}. Before the break: ${at(before)}.`;
  const moved = move && `Moved: ${at(move.atTip)}. ${elsewhere(move, writer)}`;
  return {
    deed: proposed === 'move' ? 'Move the upper guides as below.' : 'Leave the guides where they are.',
    why: [left, moved ?? 'No spread of the upper guides fits that would do better.'],
  };
}

function elsewhere({ worst, atTip }: JudgedRepair, writer: Writer): string {
  if (worst.ratio <= atTip.ratio) return 'The rest of the rod stays below that.';
  return `Further down as before: ${placeInWords(worst)}, ${besideLimit(worst, writer)}.`;
}
