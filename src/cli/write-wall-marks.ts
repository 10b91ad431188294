import { wallMarkNumbers } from '../engine/wall-mark/wall-mark.ts';
import { sheetsPdf } from '../paper/index.ts';
import type { PaperName } from '../sheets/paper-size.ts';
import { wallMarksSheet } from '../sheets/wall-marks-sheet.ts';
import { CommandError, exitCodes } from './exit-codes.ts';
import { paperFonts } from './paper-fonts.ts';
import { writeOut } from './write-out.ts';

export interface WallMarksCommand {
  paper: PaperName;
  out: string;
  count: string;
}

/** The reference marks as PDF, two a page; answers what was written. */
export async function writeWallMarks({ paper, out, count }: WallMarksCommand): Promise<string> {
  const number = Number(count);
  if (!(Number.isInteger(number) && number >= 4 && number <= wallMarkNumbers.length)) {
    throw new CommandError(
      `--count is ${count}; give a whole number from 4 to ${wallMarkNumbers.length} (eight surround a rod well).`,
      exitCodes.input,
    );
  }
  const printedAt = new Date();
  const stamp = printedAt.toISOString().slice(0, 10);
  const sheet = wallMarksSheet({ paper, stamp, count: number });
  const { bytes } = await sheetsPdf([sheet], { title: 'Reference marks', printedAt, fonts: paperFonts() });
  writeOut(out, bytes);
  return `${out} is written: ${number} marks, two a page. Print it at 100 % and measure its rules.`;
}
