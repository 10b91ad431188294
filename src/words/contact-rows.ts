/** Guides on top: where the line lies on the blank and on the foregrip, and how far apart guides may stand without. */
import type { RealLineAtLoad } from '../engine/layout/real-line.ts';
import { spanInWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';
import { foregripInWords } from './round.ts';

interface ContactRow {
  /** Between ring `span` and the next; ring 0 is the tip-top's. */
  span: number;
  intervalM: number;
  /** The largest interval that stays clear here, at the load where it is least. */
  clearM: number;
  clearAtLoad: number;
  /** Loads at which the line lies on the blank. */
  touching: number[];
}

/** One row for every span between two rings; loads without a bend say nothing. */
export function contactRows(loads: readonly RealLineAtLoad[], fromTipM: readonly number[]): ContactRow[] {
  return fromTipM.map((station, span) => {
    const read = loads.flatMap(({ contact }, load) =>
      contact
        ? [
            {
              load,
              clearM: contact.clear[span].largestClearM,
              touches: contact.stretches[span].touches,
            },
          ]
        : [],
    );
    const least = read.reduce((most, one) => (one.clearM < most.clearM ? one : most), {
      load: 0,
      clearM: Number.POSITIVE_INFINITY,
    });
    return {
      span,
      intervalM: station - (fromTipM[span - 1] ?? 0),
      clearM: least.clearM,
      clearAtLoad: least.load,
      touching: read.filter(({ touches }) => touches).map(({ load }) => load),
    };
  });
}

/** In how many spans the line lies on the blank, and where most. */
export function touchedWords(rows: readonly ContactRow[], writer: LadderWriter): string {
  const touched = rows.filter(({ touching }) => touching.length > 0);
  if (touched.length === 0) return 'The line lies on the blank nowhere, at any load.';
  const worst = touched.reduce((most, row) =>
    row.intervalM / row.clearM > most.intervalM / most.clearM ? row : most,
  );
  const count = touched.length === 1 ? 'one span' : `${touched.length} spans`;
  return `Move guides closer or take higher rings ${spanInWords(worst.span)}. The line lies on the blank in ${count}, most there, from ${writer.loads[worst.touching[0]]}: ${writer.length(worst.intervalM)} apart, clear up to ${writer.length(worst.clearM)}.`;
}

/** Behind the last guide: on the blank, then past the foregrip; empty where both are clear of it and there is no grip. */
export function behindLastWords(loads: readonly RealLineAtLoad[], writer: LadderWriter): string {
  const read = loads.map(({ onBlank }) => onBlank);
  const first = read.findIndex((at) => at?.behindLast);
  if (first >= 0) {
    return `Behind the last guide the line lies on the blank from ${writer.loads[first]}: take a higher first guide or move it toward the butt.`;
  }
  const clearM = read.map((at) => at?.foregripClearM);
  return clearM.every((one) => one !== undefined) ? foregripInWords(clearM, writer) : '';
}
