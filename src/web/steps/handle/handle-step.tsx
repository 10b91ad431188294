import { Link } from 'wouter';
import { commonHandle } from '../../../engine/kinds/common-build.ts';
import { handlePartPlaces } from '../../../engine/kinds/handle-parts.ts';
import type { RodKindDeclaration } from '../../../engine/kinds/rod-kind.ts';
import { rodKindOf } from '../../../engine/kinds/rod-kinds.ts';
import { formatGrams, formatLength } from '../../../engine/units/format-quantity.ts';
import { readReelSide } from '../../../record/read-line.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { HandleHabitFields, HandlePartFields } from '../../parts/habits/habit-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useHandlePlan } from '../../read/use-handle-plan.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { siOf, textOf } from '../../read/values.ts';
import { FittingPart } from './fitting-part.tsx';
import { GlueGate, openBeforeGlue } from './glue-gate.tsx';
import { HandleDrawing } from './handle-drawing.tsx';
import { nextOnHandle } from './next-on-handle.ts';
import './handle.css';

const usualSeat = ({ handle: { parts } }: RodKindDeclaration) =>
  parts.includes('trigger seat') ? 'trigger' : 'plain';

/** What is assumed before the blank's length is known. */
const nineFeetM = 2.743;

/** Grip, seat and reel: where the bend begins, what to ream and to order, and the gate before glue. */
export function HandleStep() {
  const sentence = useSentence();
  const { id, single, rows, document } = useBuild();
  const { bench, choices } = useBench();
  const { system, writer } = useShop();
  const handle = single('handle');
  const rodKind = choices?.rodKind ?? 'fly';
  const used = bench?.handle ?? commonHandle(rodKind, nineFeetM);
  const show = (lengthM: number) => formatLength(lengthM, { system, decimals: 0, denominator: 8 });
  const inches = (value: number) => show(system === 'mm' ? Math.round(value * 2.54) / 100 : value * 0.0254);
  const { parts, plan, balance, unweighed } = useHandlePlan();
  const kind = rodKindOf(rodKind);
  const reelOver = readReelSide(document, rodKind) === 'over';
  const stopped = plan?.findings.find(({ severity }) => severity === 'stop');
  const next = nextOnHandle({
    stopped: stopped && sentence(stopped),
    assumedGripFront:
      siOf(handle, 'gripFront') === undefined ? writer.length(used.gripFrontFromButtM) : undefined,
    sided: bench?.sections.every(({ lineSide }) => lineSide !== undefined) ?? false,
    open: openBeforeGlue(handle),
    glued: textOf(handle, 'gluedAt') !== undefined,
    tipTopGlued: textOf(handle, 'tipTopGluedAt') !== undefined,
    tested: ['proofs', 'loadTests'].some((kind) => rows(kind).length > 0),
  });
  return (
    <BuildFields findings={plan?.findings}>
      <NextLine
        at={next.at}
        goOn={next.goOn && { href: `/builds/${id}/${next.goOn}`, name: stepName(next.goOn) }}
      >
        {next.words}
      </NextLine>
      <SinceNote works={['handle']} />
      <Part title="Handle" aside="all from the butt end of the blank">
        <HandleDrawing
          gripFrontM={used.gripFrontFromButtM}
          reelM={used.reelFromButtM}
          reelOffsetM={used.reelOffsetM}
          parts={handlePartPlaces(rodKind, used, parts)}
          reel={kind.reel === 'fly' ? 'fly' : reelOver ? 'multiplier' : 'fixed spool'}
          lipDiameterM={
            choices?.line?.reel.kind === 'fixed spool' ? choices.line.reel.lipDiameterM : undefined
          }
          trigger={(textOf(handle, 'seatKind') ?? usualSeat(kind)) === 'trigger'}
          show={writer.length}
        />
        <div className="fields-row" data-group="">
          <Field path={['handle', '-', 'gripFront']} usual={used.gripFrontFromButtM} />
          <Field path={['handle', '-', 'reelFromButt']} usual={used.reelFromButtM} />
          <Field path={['handle', '-', 'reelOffset']} usual={used.reelOffsetM} />
          <Field path={['handle', '-', 'reelMass']} />
          <Field path={['handle', '-', 'reelSide']} usual={kind.reel === 'multiplier' ? 'over' : 'under'} />
          <Field path={['handle', '-', 'seatKind']} usual={usualSeat(kind)} />
        </div>
        {balance.fromButtM !== undefined && (
          <p role="status">
            <Figure
              text={`All parts with a mass weigh ${formatGrams(balance.massKg, 1)}, thread and coats among them, and balance ${show(balance.fromButtM)} from the butt end.`}
            />
            {unweighed.length > 0 && <span className="quiet"> Not weighed yet: {unweighed.join(', ')}.</span>}
          </p>
        )}
        {!kind.flyLine && (
          <p className="quiet">
            The line leaves the reel at its{' '}
            {choices?.line?.reel.kind === 'multiplier' ? 'level-wind' : 'spool’s lip'}. How it runs from there
            is on <Link href={`/builds/${id}/layout`}>Layout</Link>.
          </p>
        )}
      </Part>
      <BoughtParts kind={kind} inches={inches} />
      {plan ? (
        <FittingPart plan={plan} show={show} />
      ) : (
        <p className="quiet">
          With the sections and a diameter of the blank, reaming steps, arbors and sizes stand here.
        </p>
      )}
      <GlueGate />
    </BuildFields>
  );
}

function BoughtParts({ kind, inches }: { kind: RodKindDeclaration; inches: (value: number) => string }) {
  return (
    <Part
      folded
      holds={[
        'handle/-/grip',
        'handle/-/seat',
        'handle/-/keeper',
        'handle/-/fightingButt',
        'handle/-/reach',
        'handle/-/rearGrip',
        'handle/-/secondGrip',
      ]}
      title="Parts"
      aside="as bought, measured once"
    >
      {kind.flyLine && (
        <p className="quiet">
          <Figure
            text={`Usual handles of one-handed fly rods are ${inches(7)} to ${inches(8)} of grip and seat, ${inches(10)} to the front of the grip; two-handed ones about ${inches(22)} (common practice, no source).`}
          />
        </p>
      )}
      <HandlePartFields foregrip={kind.handle.parts.includes('foregrip')} />
      <h3>How it is fitted and glued</h3>
      <HandleHabitFields />
      <KeepHabit collection="handle" />
    </Part>
  );
}
