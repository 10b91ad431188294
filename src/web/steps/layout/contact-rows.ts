import type { RealLineAtLoad } from '../../../engine/layout/real-line.ts';
import { spanInWords } from '../../../words/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';

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
