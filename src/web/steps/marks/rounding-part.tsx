import { useMemo } from 'react';
import { type MarksList, marksInOrder } from '../../../engine/marks/marks-list.ts';
import { ladderWriter } from '../../../words/ladder-writer.ts';
import { roundedWords } from '../../../words/rounded.ts';
import { worstInWords } from '../../../words/worst.ts';
import { Figure } from '../../fields/figure.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useLadder } from '../../worker/use-ladder.ts';

/** What the rounding to the tape's tick does to the layout: how far marks move, and the worst reading after it. */
export function RoundingPart({ list, model }: { list: MarksList; model: SheetModel }) {
  const { writer: shopWriter } = useShop();
  const rows = useMemo(() => marksInOrder(list), [list]);
  const marked = useMemo(() => rows.map((row) => row.fromTipM), [rows]);
  const bends =
    model.loads.ladder.length > 0 && !model.unreadable && marked.length === model.field.fromTipM.length;
  const before = useLadder(bends ? model.ladder : undefined, model.field.fromTipM).answer;
  const after = useLadder(bends ? model.ladder : undefined, marked).answer;
  const writer = ladderWriter(shopWriter, model.loads.kg);
  const [worstBefore, worstAfter] = [before, after].map((read) => read && worstInWords(read.reading, writer));
  return (
    <div role="status">
      <p>
        <Figure text={movedWords(list)} />
      </p>
      {model.unreadable && <p className="attention">{model.unreadable}</p>}
      {worstAfter && (
        <p>
          Marked like this, the worst is <Figure text={worstAfter} />.{' '}
          {worstBefore && worstBefore !== worstAfter && (
            <span className="quiet">
              Before rounding: <Figure text={worstBefore} />.
            </span>
          )}
        </p>
      )}
    </div>
  );
}

function movedWords(list: MarksList): string {
  const rows = marksInOrder(list);
  const moved = rows.map((row) => Math.abs(row.fromTipM - row.exactFromTipM));
  const most = Math.max(0, ...moved);
  const words = roundedWords(most, list.tapeStep);
  if (!words) return `Every mark is already on a tick of ${list.tapeStep}.`;
  const guide = rows[moved.indexOf(most)].guide;
  return `Rounding to ${list.tapeStep} moves no mark by more than ${words} (guide ${guide}).`;
}
