import { useMemo } from 'react';
import type { Sureness } from '../../../engine/sureness/sureness.ts';
import { formatDegrees, formatLength } from '../../../engine/units/format-quantity.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { Figure } from '../../fields/figure.tsx';
import { useBench } from '../../read/bench.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

interface SurenessLineProps {
  model: SheetModel;
  /** What matters more is still being worked out in the same lane. */
  waits: boolean;
}

/** Under the headline: how sure it is, on blanks that fit the readings; and that nothing is, before a reading. */
export function SurenessLine({ model, waits }: SurenessLineProps) {
  const { fit, stiffness } = useBench();
  const { system } = useShop();
  const request = stiffness.solved && fit?.request;
  const task = useMemo(() => {
    if (!request || waits || model.unreadable) return undefined;
    const ours = { ladder: model.ladder.ladder, fromTipM: model.field.fromTipM };
    const start = { ladder: model.startLadder.ladder, fromTipM: model.startFromTipM };
    const beside = model.startStands && model.startFromTipM.length > 1 && model.marksAre === 'own';
    return {
      does: 'sureness' as const,
      fit: request,
      question: { own: ours, start: beside ? start : undefined },
    };
  }, [request, waits, model]);
  const { answer, progress, working, failure } = useLongTask(task, doubtLane);
  if (!request) {
    return <p className="quiet">How sure this is cannot be said: nothing was hung on this blank yet.</p>;
  }
  if (model.unreadable) return null;
  const read = working ? progress : (answer ?? progress);
  const words = failure
    ? `How sure this is could not be worked out: ${failure}.`
    : read && surenessInWords(read, system);
  return (
    <p className={working ? 'quiet' : undefined}>
      <Figure text={words ?? 'Working out how sure this is …'} />
    </p>
  );
}

/** `Better than the start on 93 of 100 blanks that fit your readings; ...` */
export function surenessInWords({ own, better, blanks }: Sureness, system: UnitSystem): string {
  if (!own || own.blanks === 0)
    return `On none of ${blanks} blanks that fit your readings does every load have an answer.`;
  const { lineAngleRad: angle, gapM: gap } = own;
  const widest = Math.max(...own.tips.map(({ plusMinusM }) => plusMinusM));
  const tip = formatLength(widest, { system, denominator: 8, decimals: 0 });
  const [low, high] = [gap.low, gap.high].map((lengthM) =>
    formatLength(lengthM, { system, denominator: 32 }),
  );
  const range = `the largest line angle is ${formatDegrees(angle.low)} to ${formatDegrees(angle.high)}, the largest gap ${low} to ${high}, the tip within ±${tip}`;
  const than =
    better && better.of > 0 ? `better than the start on ${better.count} of ${better.of} of them, ` : '';
  const lost = own.unbent > 0 ? ` (${own.unbent} more found no bend)` : '';
  return `On ${own.blanks} blanks that fit your readings${lost}: ${than}${range} on 95 of 100.`;
}
