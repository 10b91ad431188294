import type { Stop } from '../../../engine/layout/guide-moves.ts';
import type { RuledReading } from '../../../engine/layout/rule-reading.ts';

/** Marks together with what the ladder's loads do to them. */
export interface ReadLayout {
  fromTipM: readonly number[];
  reading: RuledReading;
}

/**
 * Layouts read beside ours: the start's, the best that was found with our rule for intervals and with the other
 * one, and ours on the rod under its own weight alone.
 */
export type Beside = 'start' | 'best' | 'otherRule' | 'rest';
export const allBeside: readonly Beside[] = ['start', 'best', 'otherRule', 'rest'];

/** One moment of the Layout sheet: all that its drawings, figures and words show while guides move. */
export interface SheetFrame {
  /** Our marks, the dragged one included. */
  fromTipM: readonly number[];
  /** The newest reading there is; while dragging it may be a frame behind `fromTipM`. */
  ours: ReadLayout | undefined;
  beside: Readonly<Record<Beside, ReadLayout | undefined>>;
  /** Row of the ladder that is drawn strongly. */
  drawn: number;
  /** Guide (0 next to the tip-top) under the hand or the focus. */
  active: number | undefined;
  dragging: boolean;
  /** What kept the dragged guide from where it was wanted. */
  stop: Stop | undefined;
  /** Why there is no reading. */
  failure: string | undefined;
}

export const emptyFrame: SheetFrame = {
  fromTipM: [],
  ours: undefined,
  beside: { start: undefined, best: undefined, otherRule: undefined, rest: undefined },
  drawn: 0,
  active: undefined,
  dragging: false,
  stop: undefined,
  failure: undefined,
};
