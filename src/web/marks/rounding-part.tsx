import { type MarksList, marksInOrder } from '../../engine/sheets/marks-list.ts';
import { formatMm } from '../../engine/units/format-quantity.ts';

/** What the rounding to the tape's tick does to the layout, in words. */
export function RoundingPart({ list }: { list: MarksList }) {
  const rows = marksInOrder(list);
  const moved = rows.map((row) => Math.abs(row.fromTipM - row.exactFromTipM));
  const most = Math.max(0, ...moved);
  const guide = rows[moved.indexOf(most)]?.guide;
  return (
    <p role="status">
      {most < 5e-5
        ? `Every mark already stands on a tick of ${list.tapeStep}.`
        : `Rounding to ${list.tapeStep} moves no mark by more than ${formatMm(most)} (guide ${guide}).`}
    </p>
  );
}
