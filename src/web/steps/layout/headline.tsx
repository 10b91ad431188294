import { type ReactNode, useId, useRef } from 'react';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { unsteadyInWords, verdictInWords } from '../../../words/verdict.ts';
import { worstInWords } from '../../../words/worst.ts';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import type { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

export interface HeadlineProps {
  sheet: LiveSheet;
  writer: LadderWriter;
  startName: string;
  startBroken: boolean;
  intervals: 'growing' | 'free';
  /** Whether our marks are the start's, or only spread evenly because it makes none. */
  marksAre: 'own' | 'start' | 'spread';
  /** Why our marks cannot be read. */
  unreadable: string | undefined;
  children: ReactNode;
}

/** The worst of all readings beside its limit, the start's beside it, and what could be had. */
export function Headline(props: HeadlineProps) {
  const id = useId();
  const over = useRef<HTMLParagraphElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const start = useRef<HTMLParagraphElement>(null);
  const judgement = useRef<HTMLParagraphElement>(null);
  const otherRule = useRef<HTMLParagraphElement>(null);
  usePainted(props.sheet, (frame) => {
    const words = headlineWords(frame, props);
    if (!over.current || !title.current || !start.current || !judgement.current || !otherRule.current) return;
    paintFigure(over.current, words.over);
    paintFigure(title.current, words.title);
    title.current.classList.toggle('attention', words.beyond);
    paintFigure(start.current, words.start);
    paintFigure(judgement.current, words.judgement);
    paintFigure(otherRule.current, words.otherRule);
  });
  return (
    <section className="headline" aria-labelledby={id}>
      <p ref={over} className="aside" />
      {/* biome-ignore lint/a11y/useHeadingContent: its words are painted with every frame */}
      <h2 id={id} ref={title} className="headline-worst" />
      <p ref={start} />
      <p ref={judgement} className="headline-judgement" />
      <p ref={otherRule} className="quiet" />
      {props.children}
    </section>
  );
}

function headlineWords(frame: SheetFrame, props: HeadlineProps) {
  const { ours, beside, failure } = frame;
  if (props.unreadable) return { ...noWords, title: props.unreadable, beyond: true };
  if (failure)
    return {
      ...noWords,
      title: `This layout cannot be read: ${failure}. Load the page again.`,
      beyond: true,
    };
  const worst = ours && worstInWords(ours.reading, props.writer);
  if (!ours || !worst) return { ...noWords, title: 'Bending the rod …' };
  const verdict = verdictInWords(
    {
      ours: ours.reading,
      startName: props.startName,
      start: beside.start?.reading,
      atStart: props.marksAre === 'start' && !frame.dragging,
      startBroken: props.startBroken,
      best: beside.best?.reading,
      otherRule: beside.otherRule?.reading,
      intervals: props.intervals,
    },
    props.writer,
  );
  const title = `${worst[0].toUpperCase()}${worst.slice(1)}`;
  if (props.marksAre === 'spread') {
    verdict.start = 'The start makes no layout yet; meanwhile the guides are spread evenly.';
  }
  const judgement = [unsteadyInWords(ours.reading, props.writer), verdict.judgement]
    .filter(Boolean)
    .join(' ');
  const beyond = ours.reading.worst > 1;
  const over = beyond
    ? 'The worst of all guides and loads'
    : 'All within your limits; nearest to one of them';
  return { over, title, beyond, ...verdict, judgement };
}

const noWords = { over: '', title: '', beyond: false, start: '', judgement: '', otherRule: '' };
