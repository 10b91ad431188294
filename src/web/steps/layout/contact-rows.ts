import type { RealLineAtLoad } from '../../../engine/layout/real-line.ts';
import type { Wording } from '../../../words/bench.ts';
import { shortLength } from '../../../words/wording.ts';

export interface ContactRow {
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

/** `The line lies on the blank in 3 spans; first between guides 2 and 3, from 200 g: 11 in there, clear up to 9 1⁄4.` */
export function touchedWords(rows: readonly ContactRow[], { loads, system }: Wording): string {
  const touched = rows.filter(({ touching }) => touching.length > 0);
  if (touched.length === 0)
    return 'At no load of the ladder does the line lie on the blank between two rings.';
  const worst = touched.reduce((most, row) =>
    row.intervalM / row.clearM > most.intervalM / most.clearM ? row : most,
  );
  const where =
    worst.span === 0 ? 'between tip-top and guide 1' : `between guides ${worst.span} and ${worst.span + 1}`;
  const count = touched.length === 1 ? 'one span' : `${touched.length} spans`;
  const unit = system === 'inch' ? ' in' : ' mm';
  return `The line lies on the blank in ${count}; most ${where}, from ${loads[worst.touching[0]]}: ${shortLength(worst.intervalM, system)}${unit} apart, clear up to ${shortLength(worst.clearM, system)}${unit}. Closer guides or higher rings there keep it off.`;
}
