import { locateMark } from '../../../engine/bench/assemble.ts';
import type { SectionMark, SectionRepair } from '../../../engine/repair/replaced-section.ts';
import { Table } from '../../parts/sheet/table.tsx';

interface SectionMarksProps {
  repair: SectionRepair;
  length: (lengthM: number) => string;
  /** Every guide, where those on the new section are placed anew. */
  anewFromTipM: readonly number[] | undefined;
}

/** What becomes of each guide, from the new section's own tip end and from the tip. */
export function SectionMarks({ repair, length, anewFromTipM }: SectionMarksProps) {
  const { marks, blank } = repair;
  const placed = marks.map((mark, i) => {
    const at = mark.rewrapped ? anewFromTipM?.[i] : undefined;
    const on = at === undefined ? undefined : locateMark(blank, at);
    return on && on.onSection !== 'none' ? { ...mark, fromTipM: at, fromOwnTipM: on.fromOwnTipM } : mark;
  });
  return (
    <Table
      label="Guides on the new section and beside it"
      heads={['Guide', 'Section', 'From its tip end', 'From the tip', 'To do']}
      rows={placed.map((mark) => [
        mark.guide,
        mark.section,
        mark.fromOwnTipM === undefined ? '–' : length(mark.fromOwnTipM),
        mark.fromTipM === undefined ? '–' : length(mark.fromTipM),
        { of: toDo(mark), className: mark.rewrapped ? undefined : 'quiet' },
      ])}
    />
  );
}

function toDo({ fromTipM, rewrapped }: SectionMark): string {
  if (fromTipM === undefined) return 'no place on the new section: mark it anew';
  return rewrapped ? 'wrap it on the new section' : 'stays';
}
