import { Button } from 'react-aria-components';
import { type SwingPrediction, swingOf } from '../../../engine/flow/power.ts';
import { plusMinusHz } from '../../../engine/flow/swing-count.ts';
import { fixedDecimals } from '../../../engine/units/format-decimal.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { rowChanges } from '../../../record/operation.ts';
import { hzInWords } from '../../../words/swings.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { SwingCounts } from './swing-counts.tsx';
import type { PowerOnBench } from './use-power.ts';

/** How fast it swings, bare and finished, and what was counted beside it. */
export function SwingPart({ power }: { power: PowerOnBench | undefined }) {
  const { rows, write, newRowId } = useBuild();
  const { system } = useShop();
  const answer = power?.state.answer;
  if (!power) return null;
  const { freeLengthM, measured, state } = power;
  const add = () => {
    const id = newRowId();
    write('addSwings', rowChanges('swings', id, { order: rows('swings').length + 1, rod: 'bare' }));
  };
  const length = formatLength(freeLengthM, { system, denominator: 8, decimals: 0 });
  const main = (['bare', 'finished'] as const).flatMap(
    (rod) => (answer && swingOf(answer, { rod, clampFromTipM: freeLengthM })) ?? [],
  );
  return (
    <Part
      title="How fast it swings"
      anchor="swing"
      aside={<Figure text={`held at the front of the grip, ${length} from the tip; small swings`} />}
      tools={
        <Button className="plain" onPress={add}>
          Count swings
        </Button>
      }
    >
      {state.failure && <p className="attention">The swing could not be worked out: {state.failure}.</p>}
      {main.length > 0 ? (
        <SwingTable swings={main} stale={state.working} />
      ) : (
        !state.failure && <p className="quiet">Working out how fast it swings …</p>
      )}
      <p className="quiet small" role="status">
        {measured
          ? '± holds the truth 95 times in 100 on blanks that fit your readings. Finished: with guides, thread and finish, typical ones until you measure yours; how far wraps stiffen is inside its ±. Gravity and air are left out.'
          : 'A guess from the diameters: nothing was hung on this blank yet, so no ± is stated.'}
        {state.working && ' Being worked out again …'}
      </p>
      <SwingCounts power={power} />
    </Part>
  );
}

const names = { bare: 'Bare blank', finished: 'Finished rod' };
const swingsTimed = 40;

function SwingTable({ swings, stale }: { swings: readonly SwingPrediction[]; stale: boolean }) {
  return (
    <Table
      label="Frequencies"
      className={stale ? 'stale' : undefined}
      spoken="First and second frequency of the bare blank and the finished rod"
      heads={['rod', 'first', `${swingsTimed} swings take`, 'second']}
      rows={swings.map(({ rod, modes }) => [
        names[rod],
        modes[0] && hzInWords(modes[0].hz, plusMinusHz(modes[0])),
        modes[0] && `${fixedDecimals(swingsTimed / modes[0].hz, 1)} s`,
        modes[1] && hzInWords(modes[1].hz, plusMinusHz(modes[1])),
      ])}
    />
  );
}
