import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { NextReading } from '../../../engine/sureness/next-reading.ts';
import type { ReadingOption } from '../../../engine/sureness/reading-option.ts';
import { enoughInWords, enoughRule, narrowingInWords, readingInWords } from '../../../words/next-reading.ts';
import { Figure } from '../../fields/figure.tsx';
import { goToField } from '../../parts/sheet/next-line.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { useShop } from '../../read/shop.tsx';
import { layOutCount, layOutReading, layOutSpan, nextOrder } from './lay-out-reading.ts';
import { NextReadingTables } from './next-reading-tables.tsx';
import type { SetupRows } from './reading-rows.ts';
import type { NextReadingState } from './use-next-reading.ts';

export interface NextReadingPartProps {
  setups: readonly SetupRows[];
  next: NextReadingState;
}

/** Which reading would narrow the marks most, and whether it is enough; a tap lays its rows out. */
export function NextReadingPart({ setups, next }: NextReadingPartProps) {
  const { writer } = useShop();
  const { missing, answer, working, progress, failure } = next;
  const take = useTakeReading(setups);
  const best = answer?.options[0];
  return (
    <section className="next-reading screen-only" aria-label="What to read next">
      <h3>What to read next</h3>
      <p role="status" className="quiet">
        {missing ?? failure ?? (working ? workingWords(progress) : '')}
      </p>
      {!missing && !failure && answer && best && (
        <>
          <p className={answer.enough ? 'verdict' : undefined}>
            <Figure text={enoughInWords(answer, writer)} />
          </p>
          <p className="next-reading-best">
            {answer.enough ? 'If you want to go on: ' : ''}
            <Figure text={readingInWords(best, writer)} />
          </p>
          <p>
            <Figure text={narrowingInWords(best, answer, writer)} /> About {best.minutes} minutes
            {best.standing === undefined ? '' : ', if nobody has touched the clamp since'}.
          </p>
          <Button
            className={answer.enough ? 'button' : 'button button-main'}
            isDisabled={working}
            onPress={() => take(best)}
          >
            {best.swings ? 'Make a row for this count' : 'Lay these rows out'}
          </Button>
          <NextReadingTables next={answer} writer={writer} />
          <p className="quiet small">{enoughRule}</p>
        </>
      )}
    </section>
  );
}

function workingWords(share: NextReading | number | undefined): string {
  return typeof share === 'number'
    ? `Working out which reading would tell most … ${Math.round(100 * share)} %`
    : 'Working out which reading would tell most …';
}

/** Lays the rows out, or finds them where they stand, and goes to the first drop. */
function useTakeReading(setups: readonly SetupRows[]): (option: ReadingOption) => void {
  const { write, newRowId, rows } = useBuild();
  const { system } = useShop();
  const { fit } = useBench();
  const say = useSay();
  const [goTo, setGoTo] = useState<string>();
  // the rows come with the next state of the record
  useEffect(() => {
    const isThere =
      setups.some(hasPlace(goTo ?? '')) || rows('swings').some(({ id }) => goTo === `swings/${id}/counted`);
    if (!goTo || !isThere) return;
    goToField(goTo);
    setGoTo(undefined);
  }, [goTo, setups, rows]);
  return (option) => {
    const read = (fit?.rows ?? []).filter(({ curve }) => !curve);
    const last = setups.find(({ setup }) => setup.id === read.at(-1)?.setupId);
    const options = { system, newRowId };
    const { changes, at } = option.swings
      ? layOutCount(option, rows('swings').length, options)
      : option.supportsFromTipM
        ? layOutSpan(option, nextOrder(setups), options)
        : layOutReading(option, setups, last, options);
    if (changes.length > 0) {
      write('addReading', changes);
      say('The rows are laid out; undo takes them away.');
    }
    setGoTo(at);
  };
}

/** The drop, or a span's sag, at this path. */
function hasPlace(at: string): (rows: SetupRows) => boolean {
  return ({ tests }) =>
    tests.some(
      ({ test, readings }) =>
        at === `tests/${test.id}/sag` || readings.some(({ id }) => at === `readings/${id}/drop`),
    );
}
