import { useMemo } from 'react';
import { BuildFields } from '../fields/build-fields.tsx';
import { showQuantity } from '../fields/quantity-text.ts';
import { useBench } from '../read/bench.tsx';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { quantityOf, siOf } from '../read/values.ts';
import { NextLine } from '../shell/next-line.tsx';
import { PartsList } from '../shell/parts-list.tsx';
import { AboutPart } from './about-part.tsx';
import { LookAgain } from './look-again.tsx';
import { nextOnBlank } from './next-on-blank.ts';
import { PlanContext } from './plan-context.ts';
import { setupRowsOf } from './reading-rows.ts';
import { ReadingsPart } from './readings-part.tsx';
import { SectionsPart } from './sections-part.tsx';
import { SpinePart } from './spine-part.tsx';
import { StiffnessPart } from './stiffness-part.tsx';
import { usePlan } from './use-plan.ts';
import { WholeBlankPart } from './whole-blank-part.tsx';
import './blank.css';
import './spine.css';

const parts = [
  { anchor: 'sections', name: 'Sections' },
  { anchor: 'whole-blank', name: 'The whole blank' },
  { anchor: 'readings', name: 'Readings' },
  { anchor: 'stiffness', name: 'Stiffness' },
  { anchor: 'spine', name: 'Sweep and spine' },
];

/** The blank on the bench: its sections, what was read, how stiff it is. */
export function BlankStep() {
  const { id, rows, single } = useBuild();
  const { system } = useShop();
  const { blank, profile, findings, stiffness } = useBench();
  const plan = usePlan();
  const setups = useMemo(() => setupRowsOf(rows), [rows]);
  const next = nextOnBlank({
    sections: rows('sections'),
    diameters: rows('diameters'),
    weighedWhole: siOf(single('blank'), 'mass') !== undefined,
    setups,
    findings: [...findings, ...stiffness.findings.map((odd) => ({ ...odd, severity: 'doubt' as const }))],
    show: (row) => {
      const station = quantityOf(row.fields.fromTip);
      return station ? showQuantity(station, 'length', system).text : 'the station';
    },
  });
  return (
    <BuildFields>
      <PlanContext value={plan}>
        <NextLine
          at={next.at}
          goOn={next.done ? { href: `/builds/${id}/handle`, name: 'Handle' } : undefined}
        >
          {next.words}
        </NextLine>
        <PartsList parts={parts} />
        <LookAgain />
        <AboutPart />
        <SectionsPart blank={blank} profile={profile} />
        <WholeBlankPart />
        <ReadingsPart setups={setups} />
        <StiffnessPart />
        <SpinePart />
      </PlanContext>
    </BuildFields>
  );
}
