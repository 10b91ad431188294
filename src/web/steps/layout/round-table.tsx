import { Button } from 'react-aria-components';
import type { RoundAtLoad } from '../../../engine/flow/round-answer.ts';
import { type LayoutLimits, ringLimitRad } from '../../../engine/layout/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { largestOver } from '../../../words/round.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { Turning } from './use-turning.ts';

export interface RoundTableProps {
  model: SheetModel;
  writer: LadderWriter;
  settled: SheetFrame;
  /** Of the layout as it is in the record. */
  clear: readonly RoundAtLoad[] | undefined;
  turning: Turning;
  /** While the guides stand for common practice. */
  onTakeUp?: () => void;
}

/** Every guide's angle, to be typed, its largest turn of the line and how near the line comes behind it. */
export function RoundTable({ model, writer, settled, clear, turning, onTakeUp }: RoundTableProps) {
  const { guides } = model.choices;
  const unit = writer.units === 'inch' ? 'in' : 'mm';
  const shown = guides.map((_, index) => index).filter((index) => !liesUnder(model, index));
  const under = guides.length - shown.length;
  return (
    <>
      {onTakeUp && <TakeUpLine onTakeUp={onTakeUp} />}
      <Table
        label="Guides round the blank in figures"
        frame="close-table"
        className="stacked round-table"
        heads={['guide', 'from the top', 'ring beside its foot', 'line turns', `clears the blank, ${unit}`]}
      >
        {shown.map((index) => (
          <tr key={guides[index].id ?? index}>
            <th scope="row">{index + 1}</th>
            <td data-label="from the top">
              <AngleCell model={model} guide={index} turning={turning} writer={writer} />
            </td>
            <td data-label="ring beside its foot">
              <BesideCell row={guides[index].id} guide={index} />
            </td>
            <td data-label="line turns">
              <TurnCell guide={index} settled={settled} limits={model.limits} writer={writer} />
            </td>
            <td data-label={`clears the blank, ${unit}`}>
              <ClearCell guide={index} loads={clear} writer={writer} />
            </td>
          </tr>
        ))}
      </Table>
      <p className="small quiet">
        {under > 0 && `The other ${under} guides are under the rod; turn one and it joins the list. `}Line
        turns: the most in its ring over all loads. Clears the blank: the least, from this guide toward the
        reel, with the line straight from ring to ring.
      </p>
    </>
  );
}

function TakeUpLine({ onTakeUp }: { onTakeUp: () => void }) {
  return (
    <p>
      The guides are assumed.{' '}
      <Button className="inline" onPress={onTakeUp}>
        Enter your own
      </Button>{' '}
      to turn each of them.
    </p>
  );
}

/** As the spiral has it, under the rod like the tip-top. */
function liesUnder({ round, choices }: SheetModel, guide: number): boolean {
  const { fromTopRad, ringBesideM } = choices.guides[guide];
  return fromTopRad === undefined && !ringBesideM && Math.abs(round[guide].proposedRad - Math.PI) < 1e-6;
}

function BesideCell({ row, guide }: { row: string | undefined; guide: number }) {
  if (row === undefined) return <>over its foot</>;
  const label = `Ring of guide ${guide + 1} beside its foot`;
  return <Field label={label} labelHidden path={['guides', row, 'ringBeside']} />;
}

interface CellProps {
  guide: number;
  writer: LadderWriter;
}

function AngleCell({
  model,
  guide,
  turning,
  writer,
}: CellProps & Pick<RoundTableProps, 'model' | 'turning'>) {
  const { id } = model.choices.guides[guide];
  const { fromTopRad, proposedRad } = model.round[guide];
  const { held } = turning;
  if (held?.guide === guide) return <strong>{writer.angle(held.fromTopRad)}</strong>;
  if (id === undefined) return <>{writer.angle(fromTopRad)}</>;
  return (
    <Field
      label={`Guide ${guide + 1} from the top`}
      labelHidden
      path={['guides', id, 'around']}
      pale={writer.angle(proposedRad)}
    />
  );
}

function TurnCell({
  guide,
  settled,
  limits,
  writer,
}: CellProps & { settled: SheetFrame; limits: LayoutLimits }) {
  const loads = settled.ours?.reading.loads ?? [];
  const most = Math.max(0, ...loads.map(({ rings }) => rings[guide + 1]?.lineAngleRad ?? 0));
  if (loads.length === 0) return <>–</>;
  const limitRad = ringLimitRad(limits, guide + 1, settled.fromTipM.length);
  return (
    <span className={limitRad !== undefined && most > limitRad ? 'attention' : undefined}>
      {writer.lineAngle(most)}
    </span>
  );
}

function ClearCell({ guide, loads, writer }: CellProps & { loads: readonly RoundAtLoad[] | undefined }) {
  if (!loads || loads.length === 0 || loads[0].clearM.length <= guide + 1) return <>–</>;
  const clearM = -largestOver(loads, (at) => -at.clearM[guide + 1]).value;
  if (clearM <= 0) return <span className="attention">touches</span>;
  return <Figure text={bare(writer.fine(clearM))} />;
}
