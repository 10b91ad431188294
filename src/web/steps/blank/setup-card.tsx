import { useMemo, useState } from 'react';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { setupName } from '../../../record/row-names.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { FlagChecks } from './flag-checks.tsx';
import { usePlanContext } from './plan-context.ts';
import { floorTrouble, setupOfRows } from './protocol-of-rows.ts';
import { ReadingNow } from './reading-now.tsx';
import type { SetupRows } from './reading-rows.ts';
import { SetupMore } from './setup-more.tsx';
import { TestColumn } from './test-column.tsx';

/** One set-up on the bench: where the clamp holds, where the flags are, and a column per weight. */
export function SetupCard({ rows, index }: { rows: SetupRows; index: number }) {
  const { setup, tests } = rows;
  const name = setupName(setup, index);
  const path = (field: string) => ['setups', setup.id, field] as const;
  const [at, setAt] = useState<string>();
  return (
    <section
      className="setup-card"
      aria-label={name}
      onFocusCapture={(event) => setAt((event.target as HTMLElement).dataset.path)}
    >
      <ReadingNow rows={rows} at={at} />
      <div className="test-columns">
        {tests.map((test, order) => (
          <TestColumn key={test.test.id} rows={test} setup={setup} name={name} order={order} />
        ))}
      </div>
      <div className="setup-place">
        <h3>
          <span className="section-number">{index + 1}</span> {name}
        </h3>
        <div className="fields-two">
          <Field path={path('clampFromTip')} passedOver />
          <Field path={path('clampHeight')} passedOver />
        </div>
        <Field path={path('edge')} />
        <FloorLine rows={rows} />
        <FlagChecks rows={rows} name={name} />
      </div>
      <SetupMore rows={rows} name={name} />
    </section>
  );
}

/** How high the clamp must be for the weight to hang free. */
function FloorLine({ rows }: { rows: SetupRows }) {
  const sentence = useSentence();
  const { system } = useShop();
  const plan = usePlanContext();
  const planned = useMemo(() => plan && setupOfRows(rows, plan.tables), [plan, rows]);
  if (!planned) return null;
  const odd = floorTrouble(rows, planned);
  const trouble = odd && sentence(odd);
  const needed = formatLength(planned.clampHeightNeededM, { system, denominator: 2, decimals: 0 });
  return (
    <p role="status" className={trouble ? 'attention small' : 'quiet small'}>
      <Figure text={trouble ?? `Clamp at least ${needed} above the floor, or the weight touches.`} />
    </p>
  );
}
