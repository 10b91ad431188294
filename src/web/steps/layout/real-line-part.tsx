import { useMemo } from 'react';
import { foregripOf } from '../../../engine/flow/foregrip.ts';
import type { RealLineAtLoad } from '../../../engine/layout/real-line.ts';
import type { WorstPlace } from '../../../engine/layout/worst.ts';
import { placeInWords } from '../../../words/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { reelFeelsInWords, worstRubbingInWords } from '../../../words/real-line.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { besideLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { ContactTable } from './contact-table.tsx';

interface RealLinePartProps {
  model: SheetModel;
  writer: LadderWriter;
  /** What matters more is still being worked out in the same lane. */
  waits: boolean;
}

/** What friction in the rings and a line lying on the blank change; guides are placed without either. */
export function RealLinePart({ model, writer, waits }: RealLinePartProps) {
  const { friction, side } = model.choices;
  const task = useMemo(() => {
    if (waits || model.unreadable) return undefined;
    const { ladder, diameters } = model.ladder;
    const { fromTipM } = model.field;
    const foregrip = foregripOf(model.handle, model.choices);
    return { does: 'realLine' as const, question: { ladder, diameters, fromTipM, friction, foregrip } };
  }, [waits, model, friction]);
  const { answer, answered, working, failure } = useLongTask(task, besideLane);
  const loads = answer?.length === writer.loads.length ? answer : undefined;
  return (
    <Part
      folded
      holds={['layout/-/friction']}
      title="The line as it runs"
      aside="guides are placed for a line that runs freely"
    >
      <div className="fields-row" data-group="">
        <Field path={['layout', '-', 'frictionLowest']} />
        <Field path={['layout', '-', 'frictionHighest']} />
      </div>
      <p className="small quiet">
        Coefficient of the line on the rings. Nobody has published the friction of coated line. We show a low
        and a high guess (common practice, no source).
      </p>
      {failure && <p role="alert">This could not be worked out: {failure}.</p>}
      {loads && (
        <div className={working ? 'quiet' : undefined}>
          <FrictionTable loads={loads} writer={writer} />
          {side === 'over' && answered && (
            <ContactTable loads={loads} fromTipM={answered.question.fromTipM} writer={writer} />
          )}
        </div>
      )}
      {!loads && !failure && (
        <p className="quiet">{model.unreadable ? 'Shown once there are marks.' : 'Working it out …'}</p>
      )}
    </Part>
  );
}

function FrictionTable({ loads, writer }: { loads: readonly RealLineAtLoad[]; writer: LadderWriter }) {
  return (
    <Table
      label="Friction in figures"
      frame="close-table"
      className="stacked"
      caption="What the reel feels"
      note={
        <p className="small quiet">
          Pull at the reel, winding in and letting out, with low and high friction. Then the worst reading as
          a share of its limit, with friction and without.
        </p>
      }
      heads={['load', 'winding in', 'letting out', 'rubbing', 'worst, free']}
      rows={loads.map((load, i) => [
        writer.loads[i],
        reelFeelsInWords(load, 'in', writer),
        reelFeelsInWords(load, 'out', writer),
        worstRubbingInWords(load),
        { of: worstWords(load.free, writer), className: 'quiet card-wide' },
      ])}
    />
  );
}

/** `98 % (guide 7, 14.7°)` */
function worstWords(place: WorstPlace, writer: LadderWriter): string {
  if (place.index < 0) return '–';
  const value = place.metric === 'lineAngle' ? `, ${writer.lineAngle(place.value)}` : '';
  return `${(100 * place.ratio).toFixed(0)} % (${placeInWords(place)}${value})`;
}
