import { useMemo } from 'react';
import { readStands } from '../../../record/read-load-tests.ts';
import { showQuantity, withUnit } from '../../../words/quantity-text.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { type Screen, ScreenRail, useScreen } from '../../parts/sheet/screens.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useOpenParts } from '../../read/open-parts.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { quantityOf, siOf } from '../../read/values.ts';
import { AboutPart } from './about-part.tsx';
import { AgainPart } from './again-part.tsx';
import { readings, screenOf, screens, sections, spine, stiffness, swing } from './blank-screens.ts';
import { LinePart } from './line-part.tsx';
import { LookAgain } from './look-again.tsx';
import { type NextStep, nextOnBlank } from './next-on-blank.ts';
import { nextOnSpine } from './next-on-spine.ts';
import { PlanContext } from './plan-context.ts';
import { setupRowsOf } from './reading-rows.ts';
import { ReadingsPart } from './readings-part.tsx';
import { SectionsPart } from './sections-part.tsx';
import { SeriesPart } from './series-part.tsx';
import { SpinePart } from './spine-part.tsx';
import { StiffnessPart } from './stiffness-part.tsx';
import { SwingPart } from './swing-part.tsx';
import { TwistPart } from './twist-part.tsx';
import { unboundUnder } from './use-heavy-load.ts';
import { usePlan } from './use-plan.ts';
import { usePower } from './use-power.ts';
import { WholeBlankPart } from './whole-blank-part.tsx';
import '../../style/blank.css';
import './spine.css';

/** The blank on the bench: its sections, what was read, how stiff it is. */
export function BlankStep() {
  const sentence = useSentence();
  const { id, document, rows, single } = useBuild();
  const { reader } = useShop();
  const heard = useBench();
  const { blank, profile, findings, stiffness: fit } = heard;
  const screen = useScreen(screens);
  const { open: all } = useOpenParts();
  const plan = usePlan();
  const power = usePower();
  const setups = useMemo(() => setupRowsOf(rows), [rows]);
  const stands = useMemo(() => readStands(document), [document]);
  const onBlank = nextOnBlank({
    sections: rows('sections'),
    diameters: rows('diameters'),
    weighedWhole: siOf(single('blank'), 'mass') !== undefined,
    setups,
    stands,
    findings: [...findings, ...fit.findings.map((odd) => ({ ...odd, severity: 'doubt' as const }))],
    waits: (test, setup) => unboundUnder(heard, plan, test, setup) !== undefined,
    show: (row, field) => {
      const place = quantityOf(row.fields[field]);
      return place
        ? withUnit(showQuantity(place, 'length', reader.units).text, 'length', reader.units)
        : 'at a place';
    },
  });
  const rod = {
    isMarked: heard.choices?.guides.every(({ stationM }) => stationM !== undefined) ?? false,
    isTested: ['proofs', 'loadTests'].some((kind) => rows(kind).length > 0),
  };
  const next = !all && screen === spine ? nextOnSpine(rows('sections'), rod, onBlank) : onBlank;
  const at = `/builds/${id}/blank`;
  const shows = (one: Screen) => all || one === screen;
  const isHere = next.at === undefined || shows(screenOf(next.at));
  return (
    <BuildFields>
      <PlanContext value={plan}>
        {!all && <ScreenRail at={at} label="Screens of the blank" screens={screens} current={screen} />}
        <NextLine at={isHere ? next.at : undefined} goOn={isHere ? onward(next, id) : elsewhere(next, at)}>
          {next.finding ? `${next.words} ${sentence(next.finding)}` : next.words}
        </NextLine>
        <LookAgain />
        {shows(sections) && (
          <>
            <SectionsPart blank={blank} profile={profile} />
            <WholeBlankPart />
            <AboutPart />
          </>
        )}
        {shows(readings) && <ReadingsPart setups={setups} stands={stands} />}
        {shows(stiffness) && (
          <>
            <StiffnessPart />
            <TwistPart />
            <SeriesPart />
            <AgainPart />
          </>
        )}
        {shows(spine) && <SpinePart />}
        {shows(swing) && (
          <>
            <SwingPart power={power} />
            <LinePart power={power} />
          </>
        )}
      </PlanContext>
    </BuildFields>
  );
}

/** Where the next thing to do is on another screen of the step. */
function elsewhere({ at = '' }: NextStep, blank: string) {
  const { id, name } = screenOf(at);
  return { href: `${blank}/${id}`, name };
}

/** When the bench is complete. */
function onward({ done, goOn = 'handle' }: NextStep, id: string) {
  return done ? { href: `/builds/${id}/${goOn}`, name: stepName(goOn) } : undefined;
}
