import { Button } from 'react-aria-components';
import type { Room } from '../../../engine/handle/handle-parts.ts';
import type { HandlePlan } from '../../../engine/handle/plan-handle.ts';
import type { TipTube, TipTubeChoice } from '../../../engine/handle/tip-tube.ts';
import { formatMm } from '../../../engine/units/format-quantity.ts';
import { checkSizesInWords } from '../../../words/winding-check.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';

export interface FittingPartProps {
  plan: HandlePlan;
  show(lengthM: number): string;
}

/** What to ream, where the arbors stand, and the sizes to order. */
export function FittingPart({ plan, show }: FittingPartProps) {
  const { check, tipTube, tubeRoomM } = plan;
  const { writer } = useShop();
  return (
    <Part folded title="Fitting" aside="along the diameters measured on the blank">
      <dl className="facts">
        <dt>Tip-top’s tube</dt>
        <dd>
          <Figure text={`${tubeWords(tipTube.best, writer)}, ${fitWords(tipTube.fit, tubeRoomM, writer)}`} />
          <span className="quiet">
            <Figure
              text={`. Keep at hand ${tubeWords(tipTube.neighbours[0], writer)} and ${tubeWords(tipTube.neighbours[1], writer)}: plating narrows bores.`}
            />
          </span>
        </dd>
        <dt>Winding check</dt>
        <dd>
          <Figure
            text={`bore ${writer.calliper(check.leastBoreM)} to ${writer.calliper(check.mostBoreM)} on ${writer.calliper(check.outsideM)} of blank: ${checkSizesInWords(check, writer)}`}
          />
        </dd>
        <dt>Rod’s length</dt>
        <dd>
          <Figure text={show(plan.rodLengthM)} />
          <span className="quiet"> from the tip, fighting butt and all</span>
        </dd>
        <StrippingFact plan={plan} show={show} />
        {plan.keeperFromTipM !== undefined && (
          <>
            <dt>Keeper</dt>
            <dd>
              <Figure text={`${show(plan.keeperFromTipM)} from the tip`} />
            </dd>
          </>
        )}
      </dl>
      {plan.reaming.length > 0 ? (
        <ReamingTable of="grip" steps={plan.reaming} />
      ) : (
        <Waits what="grip" plan={plan} />
      )}
      {plan.rearReaming.length > 0 && <ReamingTable of="rear grip" steps={plan.rearReaming} />}
      {plan.arbors.length > 0 ? <ArborTable plan={plan} show={show} /> : <Waits what="seat" plan={plan} />}
    </Part>
  );
}

function fitWords(fit: TipTubeChoice['fit'], { least, most }: Room, writer: Writer): string {
  const [leastRoom, mostRoom] = [least, most].map(writer.calliper);
  if (fit === 'good') return `${leastRoom} to ${mostRoom} to spare, as it should be`;
  return fit === 'tight'
    ? `less than ${leastRoom} to spare: try the next larger as well`
    : `more than ${mostRoom} to spare: build up with a turn of thread, or try the smaller after scraping the clear coat only`;
}

function tubeWords({ size64, boreM }: TipTube, writer: Writer): string {
  return `${size64}/64 in (${writer.calliper(boreM)})`;
}

function Waits({ what, plan }: { what: 'grip' | 'seat'; plan: HandlePlan }) {
  const sentence = useSentence();
  const stopped = plan.findings.find(({ severity }) => severity === 'stop');
  if (stopped) return <p className="attention">▲ {sentence(stopped)}</p>;
  if (what === 'grip' && plan.room.grip) return <p>The grip’s bore is wide enough as it is.</p>;
  const words = {
    grip: 'Reaming the grip: give the grip’s length and bore.',
    seat: 'Arbors under the seat: give the seat’s length and bore, and the grip’s length.',
  };
  return <p className="quiet">{words[what]}</p>;
}

/** The reach, kept as the layout’s own stripping place only when the builder says so. */
function StrippingFact({ plan, show }: FittingPartProps) {
  const { write } = useBuild();
  const { system } = useShop();
  const stripping = plan.strippingFromTipM;
  if (stripping === undefined) return null;
  const text = system === 'mm' ? formatMm(stripping, 0) : `${Number((stripping / 0.0254).toFixed(3))} in`;
  const use = () =>
    write('strippingByReach', [{ path: ['layout', '-', 'startStripping'], value: { si: stripping, text } }]);
  return (
    <>
      <dt>Stripping guide</dt>
      <dd>
        <Figure text={`${show(stripping)} from the tip, by the reach`} />{' '}
        <Button className="inline screen-only" onPress={use}>
          Start the layout from it
        </Button>
      </dd>
    </>
  );
}

function ReamingTable({ of, steps }: { of: string; steps: HandlePlan['reaming'] }) {
  const { writer } = useShop();
  return (
    <Table
      label={`Reaming the ${of}`}
      caption={<>Ream the {of}, from its butt-side face</>}
      heads={['Step', 'Open to', 'Down to', 'Then']}
      rows={steps.map((step, index) => [
        index + 1,
        writer.calliper(step.widthM),
        step.depthM > 0 ? writer.length(step.depthM) : 'at the face',
        {
          of:
            step.stopAtM !== undefined &&
            `stop the reamer at ${writer.length(step.stopAtM)}, ease the rest by hand`,
          className: 'quiet',
        },
      ])}
    />
  );
}

function ArborTable({ plan, show }: FittingPartProps) {
  const { writer } = useShop();
  return (
    <Table
      label="Arbors"
      caption="Arbors, glue between them and at both ends"
      heads={['From the butt end', 'Blank', 'Gap all round']}
      rows={plan.arbors.map((band) => [
        `${show(band.fromM)} to ${show(band.toM)}`,
        writer.calliper(band.outsideM),
        writer.calliper(band.gapM),
      ])}
    />
  );
}
