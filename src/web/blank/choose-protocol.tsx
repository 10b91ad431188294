import { useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { ProtocolKind } from '../../engine/bench/protocol.ts';
import { formatGrams } from '../../engine/units/format-quantity.ts';
import { readQuantity } from '../../engine/units/read-quantity.ts';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { edges } from './edges.ts';
import { usePlanContext } from './plan-context.ts';
import { type Edge, planRows } from './plan-rows.ts';

/** The two ways to measure, with what each takes and gives; lays the rows out to be filled. */
export function ChooseProtocol({ firstOrder }: { firstOrder: number }) {
  const { write, newRowId } = useBuild();
  const { system } = useShop();
  const [edge, setEdge] = useState<Edge>('upper');
  const [height, setHeight] = useState('');
  const read = height.trim() === '' ? undefined : readQuantity(height, { dimension: 'length', system });
  const clampHeight = read?.ok ? { si: read.si, text: height.trim() } : null;
  const plan = usePlanContext();
  if (!plan) {
    return (
      <p>
        The plan follows from the blank: first the length of every section, how deep they seat, and a diameter
        at the tip and at the butt.
      </p>
    );
  }
  const layOut = (kind: ProtocolKind) =>
    write(kind === 'ten-minute' ? 'ten-minute start' : 'twenty-minute protocol', [
      ...planRows(plan.protocol(kind, clampHeight?.si), { system, edge, clampHeight, firstOrder, newRowId }),
    ]);
  return (
    <div className="choose-protocol">
      <div className="fields-row">
        <RadioGroup className="field choice" value={edge} onChange={(value) => setEdge(value as Edge)}>
          <Label className="field-label">Line of the blank you will read, the same everywhere</Label>
          <div className="choice-options">
            {edges.map(({ value, name }) => (
              <Radio key={value} value={value} className="choice-option">
                {name}
              </Radio>
            ))}
          </div>
        </RadioGroup>
        <label className="field">
          <span className="field-label">Height of the blocks over the floor, if you know it</span>
          <input
            className="field-input"
            value={height}
            placeholder="weights are then kept off the floor"
            aria-describedby="clamp-height-line"
            aria-invalid={read?.ok === false || undefined}
            onChange={(event) => setHeight(event.target.value)}
          />
          <span
            id="clamp-height-line"
            className={read?.ok === false ? 'field-line field-trouble' : 'field-line'}
          >
            {read && (read.ok ? read.understood : read.finding.message)}
          </span>
        </label>
      </div>
      <div className="ways">
        <Way
          title="Ten-minute start"
          words={`One set-up, ${plan.protocol('ten-minute').readingCount} readings, one weight. A first layout, with an honestly wide ±.`}
          onTake={() => layOut('ten-minute')}
        />
        <Way
          title="Twenty-minute protocol"
          words={`Four set-ups, ${plan.protocol('twenty-minute').readingCount} readings, the blocks moved up the blank: that tells more than forty readings at the butt. A narrow ±, enough to mark by.`}
          onTake={() => layOut('twenty-minute')}
        />
      </div>
      <p className="quiet">
        {plan.measured ? 'From the readings' : 'From the diameters'}, about {formatGrams(plan.thirdLoadKg, 0)}{' '}
        drops the tip by a third of the length
        {plan.measured ? '.' : '; good to a factor of two until something was hung.'}
      </p>
    </div>
  );
}

function Way({ title, words, onTake }: { title: string; words: string; onTake(): void }) {
  return (
    <section className="way">
      <h3>{title}</h3>
      <p>{words}</p>
      <Button className="button button-main" onPress={onTake}>
        Lay out the {title.toLowerCase()}
      </Button>
    </section>
  );
}
