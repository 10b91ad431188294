import { wallMarkNumbers, wallMarkOutlines } from '../engine/wall-mark/wall-mark.ts';
import { checkRules } from './check-rules.ts';
import { line, type Mark, type Page, type Shape, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { correctPage, type PrintFactors } from './print-correction.ts';

/** Radius of a printed mark; two of them fit on either paper, with white round them when cut apart. */
export const wallMarkRadiusMm = 42;

export interface WallMarksOptions {
  paper: PaperName;
  stamp: string;
  /** How many marks, from number 1 on: 4 to 24. Eight surround a rod well. */
  count?: number;
  factors?: PrintFactors;
}

/** Where each of the first eight is best pinned, seen from the camera. */
export const wallMarkHints: readonly string[] = [
  'bottom left',
  'bottom right',
  'top right',
  'top left',
  'top, in the middle',
  'bottom, in the middle',
  'left, half way up',
  'right, half way up',
];

const how = [
  'Pin them flat in the plane the rod bends in, so that they surround the whole rod, butt to tip: four at least, six or',
  'more let the camera’s lens be measured too. Measure each to the waist of its fish, in two directions from one corner.',
];
const beside = [
  'Measure to the waist of the',
  'fish: tail and body meet',
  'there. Flat, dry, not folded.',
  'Any way up is read; the',
  'back of a sheet is not.',
];

/** The reference marks at true size, two a page, with their numbers, where each goes, and the rules to check. */
export function wallMarksSheet({ paper, stamp, count = 8, factors }: WallMarksOptions): Sheet {
  if (!(Number.isInteger(count) && count >= 4 && count <= wallMarkNumbers.length)) {
    throw new RangeError(`${count} marks cannot be printed; choose 4 to ${wallMarkNumbers.length}`);
  }
  const pages: Page[] = [];
  for (let first = 1; first <= count; first += 2) {
    const page = pageOf(
      [first, first + 1].filter((number) => number <= count),
      { paper, stamp, count },
    );
    pages.push(factors ? correctPage(page, factors) : page);
  }
  return { title: 'Reference marks', pages };
}

function pageOf(
  numbers: readonly number[],
  { paper, stamp, count }: { paper: PaperName; stamp: string; count: number },
): Page {
  const size = standingPaper[paper];
  const headMm = marginMm + 17;
  const eachMm = 104;
  const middleOf = (i: number) => headMm + eachMm * (i + 0.5);
  const marks: Mark[] = [
    text(marginMm, marginMm + 3, `Reference marks · ${stamp}`, { bold: true }),
    ...how.map((words, i) => text(marginMm, marginMm + 9 + 4.5 * i, words, { sizeMm: 2.9 })),
    ...numbers.flatMap((number, i) => markWithWords(number, count, middleOf(i))),
    line(marginMm, headMm + eachMm, size.widthMm - marginMm, headMm + eachMm, {
      ink: 'grey',
      dashMm: [2, 2],
      name: 'cut',
    }),
    ...checkRules(size),
  ];
  return { ...size, marks };
}

function markWithWords(number: number, count: number, middleMm: number): Mark[] {
  const xMm = marginMm + wallMarkRadiusMm + 8;
  const wordsMm = xMm + wallMarkRadiusMm + 12;
  const hint = wallMarkHints[number - 1] ?? 'anywhere near the rod';
  return [
    wallMarkShape(number, xMm, middleMm),
    text(wordsMm, middleMm - 16, `${number}`, { sizeMm: 18, bold: true }),
    text(wordsMm, middleMm - 8, `mark ${number} of ${count}`, { sizeMm: 3.2 }),
    text(wordsMm, middleMm, hint, { sizeMm: 4, bold: true }),
    ...beside.map((words, i) => text(wordsMm, middleMm + 9 + 4.5 * i, words, { sizeMm: 2.9 })),
  ];
}

/** A mark about a place of the page, upright. */
export function wallMarkShape(number: number, xMm: number, yMm: number, radiusMm = wallMarkRadiusMm): Shape {
  const rings = wallMarkOutlines(number).rings.map((ring) =>
    ring.map(({ x, y }) => ({ xMm: xMm + radiusMm * x, yMm: yMm - radiusMm * y })),
  );
  return { kind: 'shape', rings, ink: 'black', name: `mark ${number}` };
}
