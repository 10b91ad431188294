import { useMemo } from 'react';
import type { JudgedReading, RodJudgement } from '../../../engine/load-test/rod-judgement.ts';
import { formatDegrees, formatLength } from '../../../engine/units/format-quantity.ts';
import { judgeQuestion } from '../../../record/judge-question.ts';
import type { LoadTest } from '../../../record/read-load-tests.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { type Cell, Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { useTracedTests } from './use-photographed.ts';

/** The last two photographs of the taped-up rod side by side: what moving the guides did. */
export function BeforeAfterPart({ model }: { model: SheetModel }) {
  const [after, before] = useTracedTests().filter(
    ({ test }) => test.rod === 'taped' && test.hungKg !== undefined,
  );
  if (!after || !before) return null;
  return (
    <Part folded title="Before and after" aside={`test ${before.number} beside test ${after.number}`}>
      <Compared before={before.test} after={after.test} model={model} />
    </Part>
  );
}

function Compared({ before, after, model }: { before: LoadTest; after: LoadTest; model: SheetModel }) {
  const then = useJudged(before, model);
  const now = useJudged(after, model);
  if (!then || !now) return <p className="quiet">Judging both photographs …</p>;
  const sameWeight = Math.abs((before.hungKg ?? 0) - (after.hungKg ?? 0)) < 0.001;
  return (
    <>
      {!sameWeight && (
        <p className="attention">
          The two tests had different weights: the readings differ for that alone. Photograph both under one.
        </p>
      )}
      <ComparedTable then={then} now={now} />
    </>
  );
}

function useJudged(test: LoadTest, model: SheetModel): RodJudgement | undefined {
  const { fit } = useBench();
  const task = useMemo(() => {
    const { request, field, choices } = model;
    const question =
      fit && judgeQuestion(test, { fit: fit.request, request, choices, marksFromTipM: field.fromTipM });
    return question && { does: 'judge' as const, question };
  }, [test, model, fit]);
  const { answer } = useLongTask(task, doubtLane);
  return answer?.status === 'judged' ? answer : undefined;
}

function ComparedTable({ then, now }: { then: RodJudgement; now: RodJudgement }) {
  const { system } = useShop();
  const gap = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 1 });
  return (
    <Table
      label="Before and after at every guide"
      caption={
        <>
          Seen before and after{' '}
          <span className="quiet">in bold what changed by more than both ± together</span>
        </>
      }
      heads={['Guide', 'Line angle before', 'after', 'Gap before, to the next', 'after']}
      rows={now.rings.map((ring, i) => [
        i === 0 ? 'tip-top' : i,
        ...pairCells(then.rings[i]?.lineAngle, ring.lineAngle, formatDegrees),
        ...pairCells(then.rings[i]?.gap, ring.gap, gap),
      ])}
    />
  );
}

function pairCells(
  before: JudgedReading | undefined,
  after: JudgedReading | undefined,
  text: (value: number) => string,
): Cell[] {
  if (!before || !after) return ['–', '–'];
  const { seen, limit } = after;
  const change = Math.abs(seen.value - before.seen.value);
  const changed = change > Math.hypot(seen.plusMinus, before.seen.plusMinus);
  const beyond = limit !== undefined && seen.value - seen.plusMinus > limit;
  const words = <Figure text={`${beyond ? '▲ ' : ''}${text(seen.value)} ± ${text(seen.plusMinus)}`} />;
  return [
    text(before.seen.value),
    { of: changed ? <strong>{words}</strong> : words, className: beyond ? 'attention' : '' },
  ];
}
