import type { Finding, FindingValue } from '../../../engine/finding.ts';
import type { TraceNote } from '../../../record/trace-notes.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import type { Writer } from '../../../words/writer.ts';
import type { NamedMark } from './photo-request.ts';

/**
 * What the tracing says of a picture, in the words of this sheet: marks by their names, taps as taps. A path of
 * the request (`marks[2].atM`) becomes the thing it stands for.
 */
export function traceWords(
  notes: readonly TraceNote[],
  marks: readonly NamedMark[],
  writer: Writer,
): string[] {
  return notes.map((note) =>
    typeof note === 'string' ? note : `${subjectOf(note.path)}${sentenceOf(named(note, marks), writer)}`,
  );
}

function subjectOf(path: string): string {
  const via = /^via\[(\d+)\]$/.exec(path);
  if (via) return `Point between ${Number(via[1]) + 1}: `;
  if (path === 'ends.butt') return 'Butt: ';
  if (path === 'ends.tip') return 'Tip: ';
  return '';
}

/** "mark 3" of the request is the third one given, whatever its name. */
function named(finding: Finding, marks: readonly NamedMark[]): Finding {
  const placed = marks.filter(({ atM }) => atM);
  const nameOf = (mark: FindingValue) => (typeof mark === 'number' ? quoted(placed[mark - 1]) : undefined);
  const { mark, otherMark } = finding.values;
  return {
    ...finding,
    values: {
      ...finding.values,
      mark: nameOf(mark) ?? mark,
      otherMark: nameOf(otherMark) ?? otherMark,
    },
  };
}

function quoted(mark: NamedMark | undefined): string | undefined {
  return mark && (mark.name.startsWith('mark') ? mark.name : `the ${mark.name} corner`);
}
