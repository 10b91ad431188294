import { useMemo, useState } from 'react';
import { loadsToHang, strainVerdict } from '../../../engine/bench/strain.ts';
import { ringLimitRad } from '../../../engine/layout/criteria.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { ladderWriter } from '../../../words/ladder-writer.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { LeadCaution } from '../../parts/cautions/lead-caution.tsx';
import { LoadTestCaution } from '../../parts/cautions/load-test-caution.tsx';
import { ringsAt } from '../../parts/drawing/attention.ts';
import type { BendView } from '../../parts/drawing/bend-view.ts';
import { BentRod } from '../../parts/drawing/bent-rod.tsx';
import { drawnRod } from '../../parts/drawing/drawn-rod.ts';
import { LoadSwitch } from '../../parts/drawing/load-switch.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { marked, Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useLadder } from '../../worker/use-ladder.ts';
import { TestCaution } from './test-caution.tsx';
import { useWallLength } from './use-load-test.ts';

/** Under the load picked: where the tip will hang, and angle and gap at every guide. */
export function ExpectedPart({ model }: { model: SheetModel }) {
  const { bench } = useBench();
  const [picked, setPicked] = useState<number>();
  const { answer, failure, working } = useLadder(model.ladder, model.field.fromTipM);
  const names = model.loads.kg.map((kg) => formatGrams(kg, 0));
  const loads = answer?.reading.loads.length === names.length ? answer.reading.loads : [];
  const strains = loads.map(({ strain }) => strain.percent);
  // the heaviest that may be hung, until one is picked
  const proposed = Math.max(0, loadsToHang(strains, model.strain) - 1);
  const at = Math.min(picked ?? proposed, names.length - 1);
  const load = loads[at];
  return (
    <Part
      title="What the test should show"
      aside={model.marksAre === 'own' ? 'with your marks' : 'with the start’s marks; none are chosen yet'}
    >
      <LoadSwitch label="Test load" names={names} drawn={at} onChange={setPicked} />
      {failure && <p className="attention">This load cannot be predicted: {failure}.</p>}
      {!load && working && <p className="aside">Bending the rod …</p>}
      {load && load.status !== 'converged' && (
        <p className="attention">
          Under {names[at]} the rod has no steady bend; pick a lighter load for the test.
        </p>
      )}
      {load?.status === 'converged' && <ExpectedBend model={model} loads={loads} at={at} />}
      <div className="expected">
        {load?.status === 'converged' && <ExpectedFigures model={model} load={load} name={names[at]} />}
        <div className="cautions">
          {loads.length > 0 && (
            <LoadTestCaution
              names={names}
              loads={loads}
              strain={model.strain}
              ferrulesBound={bench?.ferrulesBound === true}
            />
          )}
          <TestCaution />
          <LeadCaution />
        </div>
      </div>
    </Part>
  );
}

/** The rod as it should hang, to scale. */
function ExpectedBend({ model, loads, at }: { model: SheetModel; loads: readonly RuledLoad[]; at: number }) {
  const { writer: shop } = useShop();
  const writer = useMemo(() => ladderWriter(shop, model.loads.kg), [shop, model.loads.kg]);
  const rod = useMemo(() => drawnRod(model, writer), [model, writer]);
  const view: BendView = {
    rod,
    loads,
    drawn: at,
    attention: ringsAt(loads[at].worstAt),
    settled: true,
  };
  return (
    <BentRod
      moving={still}
      viewOf={() => view}
      label={`The rod as it should hang under ${writer.loads[at]}, with the line through its guides`}
      lengthM={model.rod.lengthM}
      writer={writer}
    />
  );
}

/** A drawing that waits for no hand. */
const still = { frame: undefined, subscribe: () => () => undefined };

interface ExpectedProps {
  model: SheetModel;
  load: RuledLoad;
  name: string;
}

function ExpectedFigures({ model, load, name }: ExpectedProps) {
  const show = useWallLength();
  const { writer } = useShop();
  const { limits, strain, field } = model;
  const last = load.rings.length - 1;
  return (
    <div className="expected-figures">
      <p>
        The surface strains {load.strain.percent.toFixed(2)} % at the most,{' '}
        <Figure text={show(load.strain.fromTipM)} /> from the tip; caution level {strain.cautionPercent} %.
      </p>
      {strainVerdict(load.strain.percent, strain) !== 'within' && (
        <p className="attention">
          ▲ Only computed: do not hang {name}. Pick a load that strains less than {strain.cautionPercent} %.
        </p>
      )}
      <Fold title="Guide by guide, in figures">
        <Table
          label="Expected at every guide"
          caption={
            <>
              Under {name}{' '}
              <span className="quiet">limit of the line angle {writer.lineAngle(limits.lineAngleRad)}</span>
            </>
          }
          note={
            <p className="small quiet">
              Gap by rule: what one reads from blank to line, half way to the next guide, of what is allowed
              there.
            </p>
          }
          heads={['Guide', 'From tip', 'Line angle', 'Gap by rule']}
          rows={load.rings.map(({ lineAngleRad }, ring) => {
            const limitRad = ringLimitRad(limits, ring, last);
            const beyondAngle = limitRad !== undefined && lineAngleRad > limitRad;
            const beyondGap = ring < last && load.spans[ring].gapM > limits.gapM;
            const ofLimit = ring === last && limitRad !== undefined && ` of ${writer.lineAngle(limitRad)}`;
            const angle = `${writer.lineAngle(lineAngleRad)}${ofLimit || (limitRad === undefined ? ' not counted' : '')}`;
            return [
              ring === 0 ? 'tip-top' : ring,
              show(ring === 0 ? 0 : field.fromTipM[ring - 1]),
              marked(beyondAngle, angle),
              ring < last ? marked(beyondGap, gapOfLimit(load, ring, limits.gapM, writer)) : '–',
            ];
          })}
        />
      </Fold>
    </div>
  );
}

/** As a rule reads it, beside its limit there: the ring's height and the gap above it. */
function gapOfLimit(load: RuledLoad, span: number, limitM: number, writer: Writer): string {
  const { ruleGapM } = load.ruled[span];
  return `${writer.fine(ruleGapM)} of ${writer.fine(ruleGapM - load.spans[span].gapM + limitM)}`;
}
