import { useMemo } from 'react';
import { showQuantity } from '../../../words/quantity-text.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { PartsList } from '../../parts/sheet/parts-list.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { quantityOf, siOf } from '../../read/values.ts';
import { AboutPart } from './about-part.tsx';
import { AgainPart } from './again-part.tsx';
import { LinePart } from './line-part.tsx';
import { LookAgain } from './look-again.tsx';
import { nextOnBlank } from './next-on-blank.ts';
import { PlanContext } from './plan-context.ts';
import { setupRowsOf } from './reading-rows.ts';
import { ReadingsPart } from './readings-part.tsx';
import { SectionsPart } from './sections-part.tsx';
import { SeriesPart } from './series-part.tsx';
import { SpinePart } from './spine-part.tsx';
import { StiffnessPart } from './stiffness-part.tsx';
import { SwingPart } from './swing-part.tsx';
import { usePlan } from './use-plan.ts';
import { usePower } from './use-power.ts';
import { WholeBlankPart } from './whole-blank-part.tsx';
import '../../style/blank.css';
import './spine.css';

const parts = [
  { anchor: 'sections', name: 'Sections' },
  { anchor: 'whole-blank', name: 'The whole blank' },
  { anchor: 'readings', name: 'Readings' },
  { anchor: 'stiffness', name: 'Stiffness' },
  { anchor: 'spine', name: 'Sweep and spine' },
  { anchor: 'swing', name: 'How fast it swings' },
  { anchor: 'line', name: 'Line beside the blank' },
];

/** The blank on the bench: its sections, what was read, how stiff it is. */
export function BlankStep() {
  const sentence = useSentence();
  const { id, rows, single } = useBuild();
  const { reader } = useShop();
  const { blank, choices, profile, findings, stiffness } = useBench();
  const plan = usePlan();
  const power = usePower();
  const setups = useMemo(() => setupRowsOf(rows), [rows]);
  const next = nextOnBlank({
    sections: rows('sections'),
    diameters: rows('diameters'),
    weighedWhole: siOf(single('blank'), 'mass') !== undefined,
    setups,
    findings: [...findings, ...stiffness.findings.map((odd) => ({ ...odd, severity: 'doubt' as const }))],
    show: (row) => {
      const station = quantityOf(row.fields.fromTip);
      return station ? showQuantity(station, 'length', reader.units).text : 'the station';
    },
  });
  const shown = (anchor: string) =>
    (anchor !== 'swing' || power !== undefined) &&
    (anchor !== 'line' || (power !== undefined && choices?.rodKind === 'fly')) &&
    (anchor !== 'spine' || rows('sections').length > 0);
  return (
    <BuildFields>
      <PlanContext value={plan}>
        <NextLine
          at={next.at}
          goOn={next.done ? { href: `/builds/${id}/handle`, name: 'Handle' } : undefined}
        >
          {next.finding ? `${next.words} ${sentence(next.finding)}` : next.words}
        </NextLine>
        <PartsList parts={parts.filter(({ anchor }) => shown(anchor))} />
        <LookAgain />
        <AboutPart />
        <SectionsPart blank={blank} profile={profile} />
        <WholeBlankPart />
        <ReadingsPart setups={setups} />
        <SeriesPart />
        <StiffnessPart />
        <AgainPart />
        <SpinePart />
        <SwingPart power={power} />
        <LinePart power={power} />
      </PlanContext>
    </BuildFields>
  );
}
