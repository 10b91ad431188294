import { BuildFields } from '../fields/build-fields.tsx';
import { AboutPart } from './about-part.tsx';
import { SectionsPart } from './sections-part.tsx';
import { WholeBlankPart } from './whole-blank-part.tsx';
import './blank.css';

/** The blank on the bench: its sections, what was measured, how stiff it is. */
export function BlankStep() {
  return (
    <BuildFields>
      <AboutPart />
      <SectionsPart blank={undefined} profile={[]} />
      <WholeBlankPart />
    </BuildFields>
  );
}
