import { Button } from 'react-aria-components';
import type { NextMove } from '../../../engine/flow/next-move.ts';

interface DeedButtonsProps {
  next: NextMove | undefined;
  /** `next` is of the marks as they were. */
  stale: boolean;
  /** Marks for the number of guides that `next` asks for. */
  fewestMarks: readonly number[] | undefined;
  onMove(guide: number, toM: number): void;
  onLay(fromTipM: readonly number[]): void;
}

/** Does in one press what the headline says. */
export function DeedButtons({ next, stale, fewestMarks, onMove, onLay }: DeedButtonsProps) {
  const move = next?.code === 'place-anew' ? undefined : next?.move;
  const more = next?.code === 'more-guides' ? fewestMarks : undefined;
  const main = next?.code === 'move' ? 'button button-main' : 'button';
  if (!move && !more) return null;
  return (
    <div className="deeds screen-only">
      {more && (
        <Button isDisabled={stale} className="button button-main" onPress={() => onLay(more)}>
          Use {more.length} guides
        </Button>
      )}
      {move && (
        <Button isDisabled={stale} className={main} onPress={() => onMove(move.guide, move.toM)}>
          Move it
        </Button>
      )}
    </div>
  );
}
