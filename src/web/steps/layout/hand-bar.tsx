import { useRef } from 'react';
import { Button, ToggleButton } from 'react-aria-components';
import type { Tape } from '../../../engine/layout/guide-moves.ts';
import { paintFigure } from '../../parts/drawing/fraction-text.ts';
import { usePainted } from '../../parts/drawing/use-painted.ts';
import type { LiveSheet } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

interface HandBarProps {
  sheet: LiveSheet;
  tape: Tape;
  /** One tick in words: `1⁄16 in`. */
  tick: string;
  active: number | undefined;
  pinned: boolean;
  describe(frame: SheetFrame): string;
  onStep(guide: number, byM: number): void;
  onPin(guide: number, pinned: boolean): void;
}

/** The guide in hand: where it stands in full, buttons to nudge it by a tick, and its pin. */
export function HandBar(props: HandBarProps) {
  const { sheet, tape, tick, active, pinned } = props;
  const words = useRef<HTMLParagraphElement>(null);
  usePainted(sheet, (frame) => {
    if (words.current) paintFigure(words.current, props.describe(frame));
  });
  const step = (ticks: number) => active !== undefined && props.onStep(active, ticks * tape.stepM);
  const none = active === undefined;
  return (
    <div className="hand-bar">
      <p ref={words} className="figures hand-words" />
      <div className="hand-tools screen-only">
        <Button className="button" isDisabled={none || pinned} onPress={() => step(-1)}>
          <span aria-hidden="true">◂ {tick}</span>
          <span className="visually-hidden">one tick towards the tip</span>
        </Button>
        <Button className="button" isDisabled={none || pinned} onPress={() => step(1)}>
          <span aria-hidden="true">{tick} ▸</span>
          <span className="visually-hidden">one tick towards the butt</span>
        </Button>
        <ToggleButton
          className="button"
          isDisabled={none}
          isSelected={pinned}
          onChange={(on) => active !== undefined && props.onPin(active, on)}
        >
          {pinned ? 'Pinned' : 'Pin'}
        </ToggleButton>
      </div>
    </div>
  );
}
