import type { Row } from '../../../record/document.ts';
import { sectionName } from '../../../record/row-names.ts';
import { siOf } from '../../read/values.ts';
import type { NextStep } from './next-on-blank.ts';

interface RodState {
  isMarked: boolean;
  /** A weight was predicted, or a load test begun. */
  isTested: boolean;
}

/** On the screen of sweep and spine: the line side of each section, from the tip; then back to where it was missed. */
export function nextOnSpine(
  sections: readonly Row[],
  { isMarked, isTested }: RodState,
  onBlank: NextStep,
): NextStep {
  const open = sections.findIndex((row) => siOf(row, 'lineSideAngle') === undefined);
  if (open < 0) {
    const goOn = isMarked && !isTested ? 'load-test' : 'handle';
    return onBlank.done ? { words: 'Every section has its line side.', done: true, goOn } : onBlank;
  }
  const row = sections[open];
  const name = sectionName(row, open);
  return {
    words: `Roll ${name}, choose its line side by your own rule, and enter its angle from your mark: 0° where the mark is the line side.`,
    at: `sections/${row.id}/lineSideAngle`,
  };
}
