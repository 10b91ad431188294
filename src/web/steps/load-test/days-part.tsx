import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { benchDays, type DayOfBench, firstDay } from '../../../engine/flow/bench-days.ts';
import { benchFit } from '../../../engine/stiffness/from-bench.ts';
import type { DaysCompared } from '../../../engine/sureness/compare-days.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { LoadSwitch } from '../../parts/drawing/load-switch.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

/** Does the bench repeat? The same blank on two days, mark by mark. */
export function DaysPart({ model }: { model: SheetModel }) {
  const { id } = useBuild();
  const { bench } = useBench();
  const days = useMemo(() => (bench ? benchDays(bench) : []), [bench]);
  return (
    <Part folded title="The same blank on another day" aside="clamped anew, do the marks repeat?">
      {days.length < 2 ? (
        <p className="quiet">
          Read this blank once more on another day, under <Link href={`/builds/${id}/blank`}>Blank</Link>, and
          write the day under “More about this set-up”: each day is then fitted by itself and the marks are
          compared.
        </p>
      ) : (
        <PickedDays days={days} model={model} />
      )}
    </Part>
  );
}

/** The first day beside another; of several, the builder picks. */
function PickedDays({ days, model }: { days: readonly DayOfBench[]; model: SheetModel }) {
  const [picked, setPicked] = useState(0);
  const [first, ...others] = days;
  const at = Math.min(picked, others.length - 1);
  return (
    <>
      {others.length > 1 && (
        <LoadSwitch
          label={`${dayName(first)}, beside`}
          names={others.map(dayName)}
          drawn={at}
          onChange={setPicked}
        />
      )}
      <Days key={others[at].name} first={first} second={others[at]} model={model} />
    </>
  );
}

interface DaysProps {
  first: DayOfBench;
  second: DayOfBench;
  model: SheetModel;
}

function Days({ first, second, model }: DaysProps) {
  const sentence = useSentence();
  const [asked, setAsked] = useState(false);
  const task = useMemo(() => {
    if (!asked) return undefined;
    const day = ({ bench, ...of }: DayOfBench) => ({ name: dayName(of), fit: benchFit(bench).request });
    const question = {
      days: [day(first), day(second)] as const,
      request: model.request,
      marksFromTipM: model.field.fromTipM,
    };
    return { does: 'days' as const, question };
  }, [asked, first, second, model]);
  const { answer, working, failure } = useLongTask(task, doubtLane);
  return (
    <>
      <p>{`${dayName(first)}: ${countOf(first)}; ${dayName(second)}: ${countOf(second)}.`}</p>
      {!asked && (
        <div>
          <Button className="button" onPress={() => setAsked(true)}>
            Compare the days
          </Button>
        </div>
      )}
      {failure && <p role="alert">The days could not be compared: {failure}.</p>}
      {asked && !answer && !failure && <p className="quiet">Placing the guides on both days’ blanks …</p>}
      {answer?.status === 'not-compared' && (
        <p className="attention" role="alert">
          The days could not be compared. {answer.day && `${answer.day}: `}
          {answer.reason && sentence(answer.reason)} {answer.findings[0] && sentence(answer.findings[0])}
        </p>
      )}
      {answer?.status === 'compared' && (
        <div className={working ? 'judged quiet' : 'judged'}>
          <Compared answer={answer} names={[dayName(first), dayName(second)]} />
        </div>
      )}
    </>
  );
}

function countOf({ readings }: DayOfBench): string {
  return `${readings} ${readings === 1 ? 'reading' : 'readings'}`;
}

/** As the builder named it under its set-ups. */
function dayName({ name }: Pick<DayOfBench, 'name'>): string {
  return name === firstDay ? 'first day' : name;
}

function Compared({ answer, names }: { answer: DaysCompared; names: [string, string] }) {
  const { system } = useShop();
  const length = (m: number) => formatLength(m, { system, denominator: 16, decimals: 0 });
  const { marks, repeated, costOfOther, tipApartM, bandsApart } = answer;
  const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
  const all = repeated === marks.length;
  return (
    <>
      <p role="status" className={all ? '' : 'attention'}>
        <strong>
          {repeated} of {marks.length} marks repeat within their slack
        </strong>
        . One day’s marks on the other day’s blank are at most {percent(Math.max(...costOfOther))} worse than
        its own best; the tips hang <Figure text={length(Math.max(...tipApartM))} /> apart at the most.
      </p>
      {bandsApart > 0.1 && (
        <p className="attention">
          Over {percent(bandsApart)} of the blank the two days’ stiffness differ by more than their ±: was it
          the same blank, turned the same way, with its ferrules seated alike?
        </p>
      )}
      <Table
        label="Marks of two days"
        caption="Best place of every guide, from the tip"
        heads={['Guide', names[0], names[1], 'Apart', 'Slack', 'Repeats']}
        rows={marks.map(({ fromTipM: [a, b], slackM, within }, i) => [
          i + 1,
          length(a),
          length(b),
          length(Math.abs(b - a)),
          length(slackM),
          { of: within ? 'yes' : '▲ no', className: within ? '' : 'attention' },
        ])}
      />
    </>
  );
}
