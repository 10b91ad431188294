import type { Finding, FindingValue } from '../engine/finding.ts';
import type { TraceNote } from '../record/trace-notes.ts';
import { isSaid, sentenceOf } from './sentence.ts';
import type { Writer } from './writer.ts';

/**
 * What the tracing says of a picture: marks by their names (of those with a place, in their order), taps as taps. A path
 * of the request (`marks[2].atM`) becomes the thing it stands for.
 */
export function traceWords(notes: readonly TraceNote[], marks: readonly string[], writer: Writer): string[] {
  return notes.flatMap((note) => {
    if (typeof note === 'string') return note;
    return isSaid(note) ? `${subjectOf(note.path)}${sentenceOf(named(note, marks), writer)}` : [];
  });
}

function subjectOf(path: string): string {
  const via = /^via\[(\d+)\]$/.exec(path);
  if (via) return `Point between ${Number(via[1]) + 1}: `;
  if (path === 'ends.butt') return 'Butt: ';
  if (path === 'ends.tip') return 'Tip: ';
  return '';
}

/** "mark 3" of the request is the third one given, whatever its name. */
function named(finding: Finding, marks: readonly string[]): Finding {
  const nameOf = (mark: FindingValue) => (typeof mark === 'number' ? quoted(marks[mark - 1]) : undefined);
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

function quoted(mark: string | undefined): string | undefined {
  return mark && (mark.startsWith('mark') ? mark : `the ${mark} corner`);
}
