import { useRef } from 'react';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { type VerdictParts, verdictInWords } from '../../../words/verdict.ts';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import type { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface BesideStartProps extends Pick<VerdictParts, 'startName' | 'startBroken' | 'intervals'> {
  sheet: LiveSheet;
  writer: LadderWriter;
  /** Whether our marks are the start's, or only spread evenly because it makes none. */
  marksAre: 'own' | 'start' | 'spread';
  /** For want of sureness nothing is placed; there is no best to compare with. */
  startIsKept: boolean;
}

/** How these marks compare with the start, and what could still be had; answers while a guide is dragged. */
export function BesideStart(props: BesideStartProps) {
  const start = useRef<HTMLParagraphElement>(null);
  const judgement = useRef<HTMLParagraphElement>(null);
  const otherRule = useRef<HTMLParagraphElement>(null);
  usePainted(props.sheet, (frame) => {
    const words = besideWords(frame, props);
    if (!start.current || !judgement.current || !otherRule.current) return;
    paintFigure(start.current, words.start);
    paintFigure(judgement.current, words.judgement);
    paintFigure(otherRule.current, words.otherRule);
  });
  return (
    <>
      <p ref={start} />
      <p ref={judgement} className="headline-judgement" />
      <p ref={otherRule} className="quiet" />
    </>
  );
}

function besideWords({ ours, beside, dragging }: SheetFrame, props: BesideStartProps) {
  const { marksAre, writer, startName, startBroken, intervals, startIsKept } = props;
  if (!ours) return { start: '', judgement: '', otherRule: '' };
  const verdict = verdictInWords(
    {
      ours: ours.reading,
      startName,
      start: beside.start?.reading,
      atStart: marksAre === 'start' && !dragging,
      startBroken,
      best: startIsKept ? undefined : beside.best?.reading,
      otherRule: startIsKept ? undefined : beside.otherRule?.reading,
      intervals,
    },
    writer,
  );
  return marksAre === 'spread'
    ? { ...verdict, start: 'The start makes no layout yet; meanwhile the guides are spread evenly.' }
    : verdict;
}
