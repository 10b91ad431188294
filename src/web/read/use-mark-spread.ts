import { useMemo, useRef } from 'react';
import { plusMinusOfMarks, surenessDefaults } from '../../engine/flow/build-sureness.ts';
import type { LayoutAnswer } from '../../engine/layout/layout.ts';
import type { MarkSpread } from '../../engine/sureness/mark-spread.ts';
import { fixedDecimals } from '../../engine/units/format-decimal.ts';
import type { SpreadTask } from '../worker/doubt-messages.ts';
import { doubtLane } from '../worker/engine-worker.ts';
import { type LongTaskState, useLongTask } from '../worker/use-long-task.ts';
import { useBench } from './bench.tsx';
import type { SheetModel } from './sheet-model.ts';

/** How sure every guide's best place is. */
export interface PlaceDoubt {
  /** By guide, 95 %; undefined where the mark is given, or nothing is known (yet). */
  plusMinusM: readonly (number | undefined)[];
  /** `plusMinusM` is of an earlier state of the build. */
  stale: boolean;
  /** What the column rests on, or why it is empty. */
  words: string;
}

/** Works out in the background how far the best places move on blanks that fit the readings. */
export function useMarkSpread(
  model: SheetModel | undefined,
  { answer: best, working: placing }: LongTaskLike,
): PlaceDoubt {
  const { fit, stiffness } = useBench();
  const request = stiffness.solved && fit?.request;
  const asked = useMemo((): SpreadTask | undefined => {
    if (!request || !model || model.unreadable || placing) return undefined;
    if (!best || best.status === 'refused') return undefined;
    return { does: 'spread', fit: request, request: model.request, proposedFromTipM: best.fromTipM };
  }, [request, model, best, placing]);
  const state = useLongTask(asked, doubtLane);
  const { answer, answered, progress, failure, working } = state;
  const plusMinusM = useMemo(
    () => (answer && answered ? plusMinusOfMarks(answered.request, answer) : undefined),
    [answer, answered],
  );
  /** What stood there last stays, as stale, while the placing it is about is worked out again. */
  const last = useRef<PlaceDoubt['plusMinusM']>([]);
  if (plusMinusM) last.current = plusMinusM;
  if (!request) return { plusMinusM: [], stale: false, words: noReadingsWords };
  const shown = failure ? [] : last.current;
  const stale = shown.length > 0 && (working || asked === undefined);
  return { plusMinusM: shown, stale, words: doubtWords({ answer, progress, failure, working }, stale) };
}

/** The placing that the ± is about. */
interface LongTaskLike {
  answer: LayoutAnswer | undefined;
  working: boolean;
}

const noReadingsWords = 'No ± can be stated: nothing was hung on this blank yet.';

type DoubtState = Omit<LongTaskState<SpreadTask>, 'answered'>;

function doubtWords({ answer, progress, failure }: DoubtState, stale: boolean): string {
  if (failure) return `The ± of the best places could not be worked out: ${failure}.`;
  const so = progress?.tried ?? 0;
  const of = `${so} of ${surenessDefaults.placeOn} blanks`;
  if (stale) return `The ± is still of the build as it was; being worked out again (${of}) …`;
  if (!answer)
    return so > 0
      ? `How sure the places are: ${of} placed …`
      : 'How sure the places are is being worked out …';
  return spreadInWords(answer);
}

/** `Guides placed anew on 10 blanks that fit your readings: keeping these marks …` */
function spreadInWords({ blanks, tried, costOfKeeping }: MarkSpread): string {
  if (blanks < 2) {
    return `How sure the places are is not known. On ${tried - blanks} of ${tried} blanks that fit your readings the guides could not be placed.`;
  }
  const lost = blanks < tried ? ` (on ${tried - blanks} more they could not be)` : '';
  const cost = `${fixedDecimals(100 * costOfKeeping, 0)} %`;
  return `Guides placed anew on ${blanks} blanks that fit your readings${lost}: keeping these marks makes the worst reading at most ${cost} worse than each blank’s own best.`;
}
