import { Link } from 'wouter';
import type { ColourNeed } from '../../../engine/wraps/plan-wraps.ts';
import { threadLetters, wrapSheet } from '../../../sheets/wrap-sheet.ts';
import { threadCalled } from '../../../words/colour-words.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { KeepHabit } from '../../fields/keep-habit.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { RodWrapFields, ThreadFields, WrapHabitFields } from '../../parts/habits/habit-fields.tsx';
import { Findings } from '../../parts/sheet/findings.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { type Sentence, useSentence } from '../../read/use-sentence.ts';
import { useWraps, type WrapsOnRod } from '../../read/use-wraps.ts';
import { flagOf, numberOf, textOf } from '../../read/values.ts';
import { WrapsDrawing } from './wraps-drawing.tsx';
import { WrapsTable } from './wraps-table.tsx';
import './wraps.css';

/** From marks and feet to wraps: lengths, turns, thread, and the whole rod in its colours. */
export function WrapsStep() {
  const sentence = useSentence();
  const { id, single } = useBuild();
  const { system, writer } = useShop();
  const wraps = useWraps();
  if (!wraps) {
    return (
      <NextLine>
        The wraps follow the blank: give its sections and a diameter under{' '}
        <Link href={`/builds/${id}/blank`}>Blank</Link>.
      </NextLine>
    );
  }
  // Wraps are laid to the thread, finer than guides are marked.
  const step = system === 'mm' ? '1 mm' : '1/32 in';
  const place = signaturePlace(wraps);
  const asksGlue = !textOf(single('handle'), 'gluedAt') && !flagOf(single('finish'), 'wrapsChecked');
  const isCounted = numberOf(single('wraps'), 'turnsCounted') !== undefined;
  const on = wraps.unmarked > 0 ? 'layout' : asksGlue ? 'handle' : 'finish';
  const onPaper = {
    tapeStep: step,
    writer,
    colours: wraps.choices,
    round: wraps.round,
    signature: place && { ...place, words: textOf(single('wraps'), 'signatureText') },
  } as const;
  return (
    <BuildFields findings={wraps.plan.findings}>
      <NextLine
        at={on === 'finish' && !isCounted ? 'wraps/-/turnsCounted' : undefined}
        goOn={{ href: `/builds/${id}/${on}`, name: stepName(on) }}
      >
        {on === 'handle' ? glueFirst : nextWords(wraps, isCounted, sentence)}
      </NextLine>
      <SinceNote works={['wraps']} />
      <Part
        title="Wraps"
        aside="true along the rod, drawn thick across it"
        tools={
          <PrintButton
            sheet="wraps"
            draw={(on) => [wrapSheet(wraps.plan, wraps.blank, { ...on, ...onPaper })]}
          >
            Wrap sheet as PDF
          </PrintButton>
        }
      >
        <WrapsDrawing {...wraps} signature={place} />
        <ThreadNeeds colours={wraps.plan.colours} />
        <Findings findings={wraps.plan.findings} />
      </Part>
      <Part
        folded
        holds={['wraps/-/thread', 'wraps/-/trim', 'wraps/-/underwrap']}
        title="Threads"
        aside="the drawing’s colour, and what the spool says"
      >
        <ThreadFields underwrap={wraps.choices.underwrap} lots />
      </Part>
      <Part
        folded
        holds={['wraps/']}
        title="How it is wrapped"
        aside="grey numbers hold until you type your own; common practice, no source"
      >
        <WrapHabitFields />
        <h3>On this rod alone</h3>
        <RodWrapFields sections={wraps.blank.sections} />
        <KeepHabit collection="wraps" />
      </Part>
      <Part folded title="Where each wrap lies">
        <WrapsTable blank={wraps.blank} wraps={wraps.plan.wraps} round={wraps.round} step={step} />
      </Part>
      <WrappingCaution />
    </BuildFields>
  );
}

function WrappingCaution() {
  return (
    <Caution
      about="wrapping"
      brief="Stop the motor before you touch the rod."
      source="Ontario Ministry of Labour, lathe entanglement alert; common practice for blades and thread"
    >
      A turning rod winds up loose thread, hair and sleeves: stop the motor before touching it. Cut tags with
      a new blade, away from the hand. Too much tension over a sharp foot cuts into the blank.
    </Caution>
  );
}

const glueFirst = 'Glue the handle before you wrap: the guides are lined up with its seat.';

function nextWords({ plan, unmarked }: WrapsOnRod, isCounted: boolean, sentence: Sentence): string {
  if (plan.findings.length > 0) return sentence(plan.findings[0]);
  if (unmarked > 0)
    return `${unmarked} ${unmarked === 1 ? 'guide has' : 'guides have'} no mark yet and no wrap: place them in the layout.`;
  return isCounted
    ? 'Wrap from the tip down, as the sheet says; then brush the finish.'
    : 'Lay a test wrap, count its turns, then wrap from the tip down.';
}

function signaturePlace({ blank, choices }: WrapsOnRod) {
  const { signature } = choices;
  return (
    signature && {
      fromTipM: blank.lengthM - signature.fromButtM - signature.lengthM,
      lengthM: signature.lengthM,
    }
  );
}

const partWords = { thread: 'Thread', trim: 'Trim', underwrap: 'Underwrap' } as const;

/** Thread to have at hand, per colour, tags and reserve in it; the letters stand on the printed sheet too. */
function ThreadNeeds({ colours }: { colours: readonly ColourNeed[] }) {
  const { writer } = useShop();
  return (
    <ul className="thread-needs" aria-label="Thread needed">
      {colours.map(({ part, threadM, spools, lot, ...thread }) => (
        <li key={part}>
          <span className="thread-swatch" style={{ background: thread.colour }} aria-hidden="true" />
          {threadLetters[part]} {partWords[part]}, {threadCalled(thread)}
          {lot && `, lot ${lot}`}: {writer.run(threadM)} with tags and reserve,{' '}
          {spools === 1 ? '1 spool' : `${spools} spools`}
        </li>
      ))}
    </ul>
  );
}
