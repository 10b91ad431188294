import { coatSchedule } from '../../../engine/finish/schedule.ts';
import { finishSheet } from '../../../sheets/finish-sheet.ts';
import { dueWords } from '../../../words/due.ts';
import { finishFaults } from '../../../words/finish-faults.ts';
import { clockWords } from '../../../words/intl.ts';
import type { Writer } from '../../../words/writer.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Figure } from '../../fields/figure.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { ProductFields } from '../../parts/habits/habit-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { type FinishOnRod, useFinish } from '../../read/use-finish.ts';
import { useNow } from '../../read/use-now.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { textOf } from '../../read/values.ts';
import { CoatsPart, openChecks } from './coats-part.tsx';
import { FinishedPart } from './finished-part.tsx';
import { MixPart } from './mix-part.tsx';
import { nextOnFinish } from './next-on-finish.ts';
import '../../style/finish.css';

/** What to mix, when to turn, recoat, bend and fish, and what to do when a coat goes wrong. */
export function FinishStep() {
  const sentence = useSentence();
  const { id, single } = useBuild();
  const { writer } = useShop();
  const nowMs = useNow();
  const finish = useFinish(nowMs);
  const next = nextOnFinish(finish, nowMs, openChecks(single('finish')));
  const onPaper = {
    product: textOf(single('finish'), 'product') ?? 'Finish',
    roomC: finish.roomC,
    coatMl: finish.firstCoatMl,
    batch: finish.batch,
    due: dueOnPaper(finish, writer, nowMs),
  };
  return (
    <BuildFields findings={finish.findings}>
      <NextLine
        at={next.at}
        goOn={next.goOn && { href: `/builds/${id}/${next.goOn}`, name: stepName(next.goOn) }}
      >
        {finish.findings.length > 0 ? sentence(finish.findings[0]) : next.words}
      </NextLine>
      <SinceNote works={['finish']} />
      <MixPart finish={finish} />
      <EpoxyCaution writer={writer} />
      <CoatsPart finish={finish} nowMs={nowMs} />
      <Caution
        about="turner"
        brief="Keep sleeves and hair away from the turner."
        source="Ontario Ministry of Labour, lathe entanglement alert; common practice for lamps"
      >
        On the turner a long tip whips and loose thread winds up: support it, keep sleeves and hair away.
        Curing lamps: shield eyes and skin.
      </Caution>
      <Part
        folded
        holds={[
          'finish/-/product',
          'finish/-/statedAtC',
          'finish/-/potLife',
          'finish/-/turnFor',
          'finish/-/recoat',
          'finish/-/flexAfter',
          'finish/-/fishAfter',
          'finish/-/halvesPerC',
        ]}
        title="Product"
        aside="from its data sheet, once; common practice has no source"
        tools={
          <PrintButton sheet="finish" draw={(on) => [finishSheet(onPaper, on)]}>
            Finish sheet as PDF
          </PrintButton>
        }
      >
        <ProductFields />
        <KeepHabit collection="finish" />
        <p className="quiet">
          <Figure
            text={`Times halve for every ${writer.warmer(10)} above the data sheet’s temperature and double below it (common practice, from ${writer.temperature(15)} to ${writer.temperature(30)}). Measure the room at the rod, not at the door.`}
          />
        </p>
      </Part>
      <FinishedPart />
      <FaultsPart />
    </BuildFields>
  );
}

function EpoxyCaution({ writer }: { writer: Writer }) {
  return (
    <Caution
      about="epoxy"
      brief="Gloves on, room aired, no flame near solvents."
      source="HSE RR079 and construction dermatitis pages; oshwiki, epoxy resins; YSU, flammable materials"
    >
      Epoxy and its hardener can sensitise for life and burn the eyes: thick nitrile gloves, no skin contact,
      soap instead of solvent, an aired room. Solvents flash below {writer.temperature(38)}: no spirit lamp,
      torch or heat gun near them. The product’s data sheet comes first.
    </Caution>
  );
}

function FaultsPart() {
  return (
    <Part folded title="What went wrong" aside="and the usual remedy; common practice, no source">
      <dl className="faults">
        {finishFaults.map(({ fault, cause, remedy }) => (
          <div key={fault}>
            <dt>{fault}</dt>
            <dd>
              <span className="quiet">{cause}.</span> {remedy}
            </dd>
          </div>
        ))}
      </dl>
    </Part>
  );
}

/** Clock times of the latest coat, or hours after brushing where none is on yet. */
function dueOnPaper({ coats, times, roomC }: FinishOnRod, writer: Writer, nowMs: number) {
  const last = coats.at(-1);
  return coatSchedule(last?.brushedAtMs ?? 0, times, { roomC: last?.roomC ?? roomC, latest: true }).map(
    ({ due, atMs }) => ({
      what: dueWords[due],
      when: last
        ? clockWords(atMs, nowMs)
        : `${writer.duration(atMs / 1000)} after ${due === 'brushing-ends' ? 'mixing' : 'brushing'}`,
    }),
  );
}
