import { useRef } from 'react';
import type { NextMove } from '../../../engine/flow/next-move.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { nextMoveInWords } from '../../../words/next-move.ts';
import { Fold } from '../../parts/sheet/fold.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { LayoutTask } from '../../worker/messages.ts';
import type { LongTaskState } from '../../worker/use-long-task.ts';
import { BesideStart } from './beside-start.tsx';
import { DeedButtons } from './deed-buttons.tsx';
import { Headline } from './headline.tsx';
import type { LiveSheet } from './live-sheet.ts';
import { PlaceButton } from './place-button.tsx';
import { placeOffer } from './place-offer.ts';
import { breaksRules, sameMarks, startName } from './start-state.ts';
import { SurenessLine } from './sureness-line.tsx';
import type { Counts } from './use-counts.ts';
import type { Marks } from './use-marks.ts';
import { type WhatNext, withCounts } from './use-next-move.ts';

interface SidePartProps {
  sheet: LiveSheet;
  model: SheetModel;
  writer: LadderWriter;
  marks: Marks;
  best: LongTaskState<LayoutTask>;
  /** The best marks, on the tape. */
  bestMarks: readonly number[] | undefined;
  next: WhatNext;
  counts: Counts;
}

/** Beside the bend: what to do first, and how sure that is. */
export function SidePart(props: SidePartProps) {
  const { sheet, model, writer, marks, best, bestMarks, counts } = props;
  const { choices, field, marksAre, loads } = model;
  const own = field.fromTipM.length;
  const next = settledMove(props.next, counts);
  // what was said last keeps its room while it is worked out again, so that the ruler stays under the hand
  const last = useRef<NextMove>(undefined);
  if (next) last.current = next;
  const said = last.current && nextMoveInWords(last.current, { count: own, loadsKg: loads.kg }, writer);
  const isBest = bestMarks !== undefined && sameMarks(bestMarks, field.fromTipM);
  const startIsKept = best.answer?.status !== 'refused' && best.answer?.verdict.startKept !== undefined;
  const fewest = counts.answer?.counts.find(({ count }) => count === last.current?.fewest);
  return (
    <Headline sheet={sheet} writer={writer} said={said} stale={!next} unreadable={model.unreadable}>
      <DeedButtons
        next={last.current}
        stale={!next}
        fewestMarks={fewest?.fromTipM}
        onMove={marks.moveOne}
        onLay={marks.lay}
      />
      <PlaceButton
        best={best}
        marks={bestMarks}
        offer={placeOffer(isBest, marksAre === 'own', isBest && startIsKept ? 'keep' : last.current?.code)}
        onPlace={marks.place}
      />
      <SurenessLine model={model} waits={best.working} />
      <Fold title="Beside the start">
        <BesideStart
          sheet={sheet}
          writer={writer}
          startName={startName(model)}
          startBroken={breaksRules(model)}
          intervals={choices.intervals}
          marksAre={marksAre}
          startIsKept={startIsKept}
        />
      </Fold>
    </Headline>
  );
}

/** That no number of guides keeps the limits is said only once others were tried. */
function settledMove(next: WhatNext, counts: Counts): NextMove | undefined {
  const move = withCounts(next, counts.working ? undefined : counts.answer?.fewest);
  return move?.code === 'beyond-limits' && counts.working ? undefined : move;
}
