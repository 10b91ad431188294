import type { JudgedSectionRepair } from '../engine/flow/judged-section-repair.ts';
import { readingInWords } from './next-move.ts';
import type { Writer } from './writer.ts';

/** Where the guides of a replaced section go, and why: as they were beside placed anew. */
export function sectionRepairInWords(
  { before, carried, anew, proposed }: JudgedSectionRepair,
  loadsKg: readonly number[],
  writer: Writer,
): { deed: string; why: string[] } {
  const at = ({ worst }: { worst: JudgedSectionRepair['before'] }) => readingInWords(worst, loadsKg, writer);
  const why = [
    carried
      ? `With the marks as they were, closest to a limit: ${at(carried)}. On the old section: ${at({ worst: before })}.`
      : 'As they were, one guide has no place on the new section.',
    anew
      ? `Placed anew between the guides that stay: ${at(anew)}.`
      : 'Nothing else fits between the guides that stay.',
  ];
  return {
    deed:
      proposed === 'anew'
        ? 'Place the guides of the new section anew, as below.'
        : 'Keep the marks as they were on the old section.',
    why,
  };
}
