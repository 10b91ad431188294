/**
 * The printer's own error, from what the printed 100 mm rules measured: the next print is stretched by
 * 100 mm / measured, separately across and along the page.
 */
import { type Finding, findingsOf } from '../engine/finding.ts';
import type { PrinterKinds } from '../words/findings/printer.ts';
import type { Page } from './drawing.ts';

export interface PrintFactors {
  across: number;
  along: number;
}
export const truePrint: PrintFactors = { across: 1, along: 1 };

/** Printers err by a few parts in a thousand; more than this is a setting, not the printer. */
export const largestCorrection = 0.03;
export const ruleLengthM = 0.1;

export interface MeasuredRules {
  /** What the 100 mm rule across the page, and along it, measured; left out: not measured. */
  acrossM?: number;
  alongM?: number;
  /** The correction that print was made with, if any. */
  printedWith?: PrintFactors;
}
export type PrintCorrection = { ok: true; factors: PrintFactors } | { ok: false; findings: Finding[] };

export function printCorrection(measured: MeasuredRules): PrintCorrection {
  const before = measured.printedWith ?? truePrint;
  const across = correctAxis(measured.acrossM, before.across, 'ruleAcross');
  const along = correctAxis(measured.alongM, before.along, 'ruleAlong');
  const findings = [across, along].flatMap((axis) => ('finding' in axis ? [axis.finding] : []));
  if ('factor' in across && 'factor' in along) {
    return { ok: true, factors: { across: across.factor, along: along.factor } };
  }
  return { ok: false, findings };
}

const found = findingsOf<PrinterKinds>();

function correctAxis(
  measuredM: number | undefined,
  before: number,
  path: string,
): { factor: number } | { finding: Finding } {
  if (measuredM === undefined) return { factor: before };
  const factor = (before * ruleLengthM) / measuredM;
  if (Math.abs(factor - 1) <= largestCorrection) return { factor };
  return { finding: found(path, 'print/rule-off', { measuredM }) };
}

/** The page with every place stretched; letters keep their shape. */
export function correctPage(page: Page, { across, along }: PrintFactors): Page {
  const marks = page.marks.map((mark): Page['marks'][number] => {
    if (mark.kind === 'line') {
      const { x1Mm, x2Mm, y1Mm, y2Mm } = mark;
      return { ...mark, x1Mm: x1Mm * across, x2Mm: x2Mm * across, y1Mm: y1Mm * along, y2Mm: y2Mm * along };
    }
    if (mark.kind === 'shape') {
      const stretched = (place: { xMm: number; yMm: number }) => ({
        xMm: place.xMm * across,
        yMm: place.yMm * along,
      });
      return { ...mark, rings: mark.rings.map((ring) => ring.map(stretched)) };
    }
    const moved = { ...mark, xMm: mark.xMm * across, yMm: mark.yMm * along };
    if (moved.kind === 'text') return moved;
    return { ...moved, widthMm: moved.widthMm * across, heightMm: moved.heightMm * along };
  });
  return { ...page, marks };
}
