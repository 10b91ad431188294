import { type Line, line, type Mark, type Page, type Sheet, text } from './drawing.ts';
import { marginMm } from './paper-size.ts';

/** Height of the block at the page's foot, and width of the column at its right edge. */
export const rulesRoomMm = { foot: 24, side: 12 } as const;
const inchMm = 25.4;

/**
 * The proof of true size on every page: a rule of 100 mm and one of 4 in, across and along, with what to do
 * about them.
 */
export function checkRules(page: Pick<Page, 'widthMm' | 'heightMm'>): Mark[] {
  const footMm = page.heightMm - marginMm;
  const rightMm = page.widthMm - marginMm;
  return [
    text(
      marginMm,
      footMm - 20,
      'Print at 100 %, no fit to page. Before use measure all four rules: 100 mm and 4 in, across and along.',
      bold,
    ),
    text(marginMm, footMm - 16.5, 'If one is off, type in what it measured and print again.', bold),
    ...across(marginMm, footMm - 9.5, 100, '100 mm'),
    ...across(marginMm, footMm - 2, 4 * inchMm, '4 in'),
    ...along(rightMm - 5, footMm - rulesRoomMm.foot - 3, 100, '100 mm'),
    ...along(rightMm, footMm - rulesRoomMm.foot - 3, 4 * inchMm, '4 in'),
  ];
}

/** Whether any page carries them: what is only read needs no measuring. */
export function hasRules(sheets: readonly Sheet[]): boolean {
  const marks = sheets.flatMap(({ pages }) => pages.flatMap((page) => page.marks));
  return marks.some((mark) => 'name' in mark && mark.name?.startsWith('rule '));
}

const bold = { sizeMm: 2.8, bold: true };

function across(xMm: number, yMm: number, lengthMm: number, label: string): Mark[] {
  const end = (x: number) => line(x, yMm - 2, x, yMm + 1.5, { name: `rule across ${label}` });
  return [
    line(xMm, yMm, xMm + lengthMm, yMm, { name: `rule across ${label}` }),
    end(xMm),
    end(xMm + lengthMm),
    ...divisions(lengthMm, label).map((at) => line(xMm + at, yMm - 1, xMm + at, yMm, { widthMm: 0.15 })),
    text(xMm + lengthMm + 3, yMm + 0.8, label, { sizeMm: 2.6 }),
  ];
}

function along(xMm: number, bottomMm: number, lengthMm: number, label: string): Mark[] {
  const end = (y: number): Line => line(xMm - 2, y, xMm + 2, y, { name: `rule along ${label}` });
  return [
    line(xMm, bottomMm - lengthMm, xMm, bottomMm, { name: `rule along ${label}` }),
    end(bottomMm - lengthMm),
    end(bottomMm),
    ...divisions(lengthMm, label).map((at) =>
      line(xMm - 1, bottomMm - at, xMm, bottomMm - at, { widthMm: 0.15 }),
    ),
    text(xMm - 1.4, bottomMm - lengthMm / 2 - 2, label, { sizeMm: 2.6, align: 'middle', upwards: true }),
  ];
}

/** Inner marks every 10 mm or every inch. */
function divisions(lengthMm: number, label: string): number[] {
  const step = label.endsWith('mm') ? 10 : inchMm;
  const count = Math.round(lengthMm / step);
  return Array.from({ length: count - 1 }, (_, index) => (index + 1) * step);
}
