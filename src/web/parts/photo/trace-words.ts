import type { Finding } from '../../../image/index.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { siWriter } from '../../../words/writer.ts';
import type { NamedMark } from './photo-request.ts';

/**
 * What the tracing says of a picture, in the words of this sheet: marks by their names, taps as taps. A path of
 * the request (`marks[2].atM`) becomes the thing it stands for.
 */
export function traceWords(findings: readonly Finding[], marks: readonly NamedMark[]): string[] {
  return findings.map((found) =>
    sentence(named(`${subjectOf(found.path)}${sentenceOf(found, siWriter)}`, marks)),
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
function named(message: string, marks: readonly NamedMark[]): string {
  const placed = marks.filter(({ atM }) => atM);
  return message
    .replace(/\bmark (\d+)\b/g, (whole, number) => quoted(placed[Number(number) - 1]) ?? whole)
    .replace(/\bmarks (\d+) and (\d+)\b/g, (whole, a, b) => {
      const [first, second] = [quoted(placed[Number(a) - 1]), quoted(placed[Number(b) - 1])];
      return first && second ? `${first} and ${second}` : whole;
    })
    .replace(/add a point on it \(via\)/g, 'tap a point on the blank (“Point between”)')
    .replace(/add points between \(via\)/g, 'tap points on the blank (“Point between”)')
    .replace(/ends\.(butt|tip)/g, 'the $1')
    .replace(/via\[(\d+)\]/g, (_, index) => `point between ${Number(index) + 1}`)
    .replace(/, near pixel \([\d, .-]+\)/g, '')
    .replace(/ about pixel \([\d, .-]+\)/g, ' the place marked ✕');
}

function quoted(mark: NamedMark | undefined): string | undefined {
  return mark && (mark.name.startsWith('mark') ? mark.name : `the ${mark.name} corner`);
}

function sentence(text: string): string {
  const trimmed = text.trim();
  const end = /[.!?]$/.test(trimmed) ? '' : '.';
  return trimmed.charAt(0).toUpperCase() + trimmed.slice(1) + end;
}
