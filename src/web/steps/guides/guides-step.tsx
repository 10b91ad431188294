import { Link } from 'wouter';
import { rackName, rackShortages } from '../../../record/rack.ts';
import { guidesToCome } from '../../../words/guides-to-come.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Field } from '../../fields/field.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { SortingFields } from '../../parts/habits/habit-fields.tsx';
import { RackShelf } from '../../parts/rack-shelf.tsx';
import { Findings } from '../../parts/sheet/findings.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useRack } from '../../read/use-rack.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { textOf } from '../../read/values.ts';
import { BagPart } from './bag-part.tsx';
import { EndFittings } from './end-fittings.tsx';
import { LooksPart } from './looks-part.tsx';
import { RackPart } from './rack-part.tsx';
import { ScanPart } from './scan-part.tsx';
import { SetTable } from './set-table.tsx';
import { TakeUpGuides } from './take-up-guides.tsx';
import '../../style/guides.css';

/** The guides in the hand: does the knot pass, do sizes fall, and which of the bag goes where. */
export function GuidesStep() {
  const sentence = useSentence();
  const { id, rows } = useBuild();
  const { rack } = useShop();
  const { choices } = useBench();
  const read = useRack();
  if (!read) {
    return (
      <NextLine>
        The guides follow the blank: give its sections and a diameter under{' '}
        <Link href={`/builds/${id}/blank`}>Blank</Link>.
      </NextLine>
    );
  }
  const { set, bag, findings, sizes, sorted, placed, numberOf } = read;
  const sortedOut = placed && bag.length > 0 && sorted.order.length === 0;
  const recorded = choices?.guides.every((guide) => guide.id !== undefined) ?? false;
  const shortages = rackShortages(rows('guides'), rack);
  const usedHere = new Map(
    rack.map((row) => [
      row.id,
      rows('guides').filter((guide) => textOf(guide, 'fromRack') === row.id).length,
    ]),
  );
  const toLayout = !placed || /station$/.test(findings[0]?.path ?? '');
  const goOn = toLayout
    ? { href: `/builds/${id}/layout`, name: 'Layout' }
    : { href: `/builds/${id}/load-test`, name: 'Load test' };
  return (
    <BuildFields findings={findings}>
      <NextLine at={placed && !sortedOut && findings.length === 0 ? 'bag' : undefined} goOn={goOn}>
        {(findings[0] && sentence(findings[0])) ??
          (sortedOut
            ? 'Every place has its guide. Tape them on as the rack says, then load the rod.'
            : placed
              ? nextOfBag(sorted.order)
              : 'The layout has no marks yet; the rack needs them.')}
      </NextLine>
      <SinceNote works={['rack']} />
      <Part
        title="The set"
        aside="chosen from the shop’s guides or typed; grey numbers are typical of the size"
      >
        <div className="fields-row knot-field">
          <Field path={['layout', '-', 'knot']} />
        </div>
        <Findings findings={findings} />
        {choices && recorded && <SetTable set={set} guides={choices.guides} findings={findings} />}
        {choices && !recorded && <TakeUpGuides choices={choices} />}
        <EndFittings />
        {shortages.map(({ rack: row, wanted, onHand }) => (
          <p key={row.id} className="attention">
            ▲ {rackName(row)}: {wanted} on this build, {onHand} in the drawer. Order {wanted - onHand}, and
            one or two to spare.
          </p>
        ))}
      </Part>
      <RackShelf usedHere={usedHere} />
      <ScanPart sizes={sizes} inBag={bag.length} />
      <BagPart bag={bag} sizes={sizes} />
      <LooksPart bag={bag} />
      <Part
        folded
        holds={['sorting/']}
        title="How straight is straight enough"
        aside="yours, or the shop’s; grey numbers are typical"
      >
        <SortingFields />
        <KeepHabit collection="sorting" />
      </Part>
      {placed && bag.length > 0 && <RackPart sorted={sorted} numberOf={numberOf} />}
      <FeetPart />
    </BuildFields>
  );
}

/** How feet are dressed, and what the grinder can do. */
function FeetPart() {
  const { writer } = useShop();
  return (
    <>
      <Part
        folded
        title="Feet"
        aside="how each foot is dressed before it is taped; common practice, no source"
      >
        <ul>
          <li>
            Ramp of {writer.fine(0.006)} to {writer.fine(0.01)} to a thin, round end; no step for the thread
            to climb.
          </li>
          <li>
            Underside dead flat on a straight edge, both feet in one plane; a foot that digs in breaks blanks.
          </li>
          <li>No burr: it must not scar a thumbnail. Polish 220 to 600, then blacken the ground part.</li>
          <li>Opening round, ring tight, plating whole: cotton wool drawn through does not catch.</li>
        </ul>
      </Part>
      <Caution
        about="grinding"
        brief="Glasses and mask on at the grinder, no gloves near the wheel."
        source="OSHA composites page and Technical Manual III:1; Ontario Ministry of Labour, entanglement alert"
      >
        Grinding feet throws sparks and metal dust: glasses and mask, no gloves near the wheel, hold the guide
        in pliers, and keep it away from solvents.
      </Caution>
    </>
  );
}

function nextOfBag(order: Parameters<typeof guidesToCome>[0]): string {
  const open = order.length > 0 ? ` Still to come: ${guidesToCome(order)}.` : '';
  return `Look along each guide of the bag and tap how straight it is.${open}`;
}
