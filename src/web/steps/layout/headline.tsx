import { type ReactNode, useId, useRef } from 'react';
import { capital } from '../../../words/capital.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import type { NextMoveInWords } from '../../../words/next-move.ts';
import { unsteadyInWords } from '../../../words/verdict.ts';
import { worstInWords } from '../../../words/worst.ts';
import { Figure } from '../../fields/figure.tsx';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import type { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface HeadlineProps {
  sheet: LiveSheet;
  writer: LadderWriter;
  /** What to do first about the settled marks. */
  said: NextMoveInWords | undefined;
  /** `said` is of the marks as they were. */
  stale: boolean;
  /** Why our marks cannot be read. */
  unreadable: string | undefined;
  children: ReactNode;
}

/** What to do first; why: the worst of all readings beside its limit, live while a guide is dragged; what it brings. */
export function Headline(props: HeadlineProps) {
  const id = useId();
  const deed = useRef<HTMLHeadingElement>(null);
  const worst = useRef<HTMLParagraphElement>(null);
  const unsteady = useRef<HTMLParagraphElement>(null);
  usePainted(props.sheet, (frame) => {
    const words = headlineWords(frame, props);
    if (!deed.current || !worst.current || !unsteady.current) return;
    paintFigure(deed.current, words.deed);
    paintFigure(worst.current, words.worst);
    worst.current.classList.toggle('attention', words.beyond);
    paintFigure(unsteady.current, words.unsteady);
  });
  return (
    <section className="headline" aria-labelledby={id}>
      {/* biome-ignore lint/a11y/useHeadingContent: its words are painted with every frame */}
      <h2 id={id} ref={deed} className="headline-deed" />
      <p ref={worst} className="headline-worst" />
      {props.said?.brings && (
        <p className={props.stale ? 'stale' : undefined}>
          <Figure text={props.said.brings} />
        </p>
      )}
      <p ref={unsteady} />
      {props.children}
    </section>
  );
}

function headlineWords(frame: SheetFrame, { said, stale, unreadable, writer }: HeadlineProps) {
  const { ours, failure, dragging } = frame;
  const broken = { deed: 'These marks cannot be read.', unsteady: '', beyond: true };
  if (unreadable) return { ...broken, worst: unreadable };
  if (failure) return { ...broken, worst: `${failure}. Load the page again.` };
  const worst = ours && worstInWords(ours.reading, writer);
  if (!ours || !worst) return { deed: 'Bending the rod …', worst: '', unsteady: '', beyond: false };
  const beyond = ours.reading.worst > 1;
  const meanwhile = beyond ? 'Beyond your limits:' : 'All guides are within your limits. Closest:';
  return {
    deed: dragging || stale || !said ? meanwhile : said.deed,
    worst: capital(worst),
    unsteady: unsteadyInWords(ours.reading, writer),
    beyond,
  };
}
