import { QuantityField } from '../fields/quantity-field.tsx';
import { textOf } from '../read/values.ts';
import type { SetupRows } from './reading-rows.ts';
import { SetupMore } from './setup-more.tsx';
import { SetupSketch } from './setup-sketch.tsx';
import { TestColumn } from './test-column.tsx';

/** One set-up on the bench: where the blocks hold, where the flags are, and a column per weight. */
export function SetupCard({ rows, index }: { rows: SetupRows; index: number }) {
  const { setup, tests } = rows;
  const name = textOf(setup, 'name') ?? `Set-up ${index + 1}`;
  const path = (field: string) => ['setups', setup.id, field] as const;
  return (
    <section className="setup-card" aria-label={name}>
      <div className="setup-place">
        <h3>
          <span className="section-number">{index + 1}</span> {name}
        </h3>
        <SetupSketch rows={rows} />
        <div className="fields-two">
          <QuantityField
            label="Tip to the blocks"
            path={path('clampFromTip')}
            gesture="place of the blocks"
            passedOver
          />
          <QuantityField
            label="Blocks over the floor"
            path={path('clampHeight')}
            gesture="height of the blocks"
            passedOver
          />
        </div>
      </div>
      <div className="test-columns">
        {tests.map((test, order) => (
          <TestColumn key={test.test.id} rows={test} setup={setup} order={order} />
        ))}
      </div>
      <SetupMore rows={rows} name={name} />
    </section>
  );
}
