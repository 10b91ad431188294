/**
 * Drawings as plain data, in millimetres of paper, that know nothing of PDF or screen.
 * Frame: origin at the top left of the page, x to the right, y down; angles clockwise as seen.
 */
export interface Page {
  widthMm: number;
  heightMm: number;
  marks: Mark[];
}
export interface Sheet {
  title: string;
  pages: Page[];
}
export type Mark = Line | Text | Area | Shape;

/** Black, a grey for what is read second, and the one strong colour for what needs attention. */
export type Ink = 'black' | 'grey' | 'attention';

export interface Line {
  kind: 'line';
  x1Mm: number;
  y1Mm: number;
  x2Mm: number;
  y2Mm: number;
  widthMm: number;
  ink: Ink;
  /** On and off lengths. */
  dashMm?: readonly number[];
  /** What it stands for, for tests and screen readers: `guide 3`. */
  name?: string;
}
export interface Text {
  kind: 'text';
  xMm: number;
  /** Of the base line. */
  yMm: number;
  pieces: readonly TextPiece[];
  sizeMm: number;
  align: 'start' | 'middle' | 'end';
  ink: Ink;
  bold?: boolean;
  /** Reads upwards along the page's edge. */
  upwards?: boolean;
}
/** Filled rectangle. */
export interface Area {
  kind: 'area';
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
  ink: Ink;
  /** A colour of its own, `#rrggbb`, such as a thread's; the ink then draws its edge. */
  fill?: string;
}
/** Filled outlines; a ring inside another that runs the other way round is a hole. */
export interface Shape {
  kind: 'shape';
  rings: readonly (readonly { xMm: number; yMm: number }[])[];
  ink: Ink;
  /** What it stands for, for tests and screen readers. */
  name?: string;
}
/** Words, or a true fraction set small above and below its stroke. */
export type TextPiece = string | { numerator: number; denominator: number };

/** The four sides of a box. */
export function frame(leftMm: number, topMm: number, widthMm: number, heightMm: number): Line[] {
  const [right, bottom] = [leftMm + widthMm, topMm + heightMm];
  return [
    line(leftMm, topMm, right, topMm),
    line(right, topMm, right, bottom),
    line(right, bottom, leftMm, bottom),
    line(leftMm, bottom, leftMm, topMm),
  ];
}

export function line(
  x1Mm: number,
  y1Mm: number,
  x2Mm: number,
  y2Mm: number,
  style: Partial<Line> = {},
): Line {
  return { kind: 'line', x1Mm, y1Mm, x2Mm, y2Mm, widthMm: 0.25, ink: 'black', ...style };
}

export function text(
  xMm: number,
  yMm: number,
  words: string | readonly TextPiece[],
  style: Partial<Text> = {},
): Text {
  const pieces = typeof words === 'string' ? textPieces(words) : words;
  return { kind: 'text', xMm, yMm, pieces, sizeMm: 3, align: 'start', ink: 'black', ...style };
}

/** Splits off the true fractions of `12 3⁄16 in from the tip`; the space before one stays with the words. */
export function textPieces(words: string): TextPiece[] {
  return words
    .split(/(\d+⁄\d+)/)
    .filter((piece) => piece !== '')
    .map((piece) => {
      const fraction = /^(\d+)⁄(\d+)$/.exec(piece);
      return fraction ? { numerator: Number(fraction[1]), denominator: Number(fraction[2]) } : piece;
    });
}

/** The text with its fractions on one line: `12 3/16 in`. */
export function plainText(pieces: readonly TextPiece[]): string {
  return pieces
    .map((piece) => (typeof piece === 'string' ? piece : `${piece.numerator}/${piece.denominator}`))
    .join('');
}
