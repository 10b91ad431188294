import { useMemo } from 'react';
import { readTurned } from '../../../engine/rotation/turned-section.ts';
import { readTurnedSections } from '../../../record/read-turned.ts';
import { sectionName } from '../../../record/row-names.ts';
import { turnsSheet } from '../../../sheets/turns-sheet.ts';
import { chanceWords } from '../../../words/turning.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBuild } from '../../read/build-context.ts';
import { SpineCard } from './spine-card.tsx';

/** Sweep and spine: every section turned about its axis, bow told from stiffness, and the side the builder chooses. */
export function SpinePart() {
  const { document, rows } = useBuild();
  const sections = rows('sections');
  const turned = useMemo(
    () => readTurnedSections(document).map((section) => ({ section, reading: readTurned(section) })),
    [document],
  );
  const findings = useMemo(() => turned.flatMap(({ reading }) => reading.findings), [turned]);
  if (sections.length === 0) return null;
  const names = new Map(sections.map((row, index) => [row.id, sectionName(row, index)]));
  const onPaper = turned.map(({ section }) => ({ name: names.get(section.sectionId) ?? 'Section', section }));
  return (
    <BuildFields findings={findings}>
      <Part
        title="Sweep and spine"
        anchor="spine"
        aside="natural bow told from stiffness difference; which side carries the line is your choice"
        tools={
          turned.length > 0 && (
            <PrintButton sheet="turns" draw={(on) => [turnsSheet(onPaper, on)]}>
              Print the sheet of turns
            </PrintButton>
          )
        }
      >
        <p>
          Wrap a paper collar round the section, numbered 0 to 360° with 0 at your reference mark. A reading’s
          angle is the number that faces down, towards the weight. Rolling by hand mixes the bow, which comes
          once in a turn, with the stiffness, which comes twice; two loads tell them apart. Four steps over
          half a turn find the stiffness difference, eight over the whole turn the bow as well.
        </p>
        <Caution
          about="spine"
          brief="Eyes covered, weights light and low, the saddle soft."
          source="common practice, no source"
        >
          Eye protection on, weights low over the floor. Keep them light and the saddle soft: a thin wall
          flattens under a hard pad, which reads as a soft place and can crush it.
        </Caution>
        {sections.map((row, index) => (
          <SpineCard
            key={row.id}
            row={row}
            index={index}
            turned={turned.filter(({ section }) => section.sectionId === row.id)}
          />
        ))}
        {turned.length > 0 && <p className="quiet small">{chanceWords}</p>}
      </Part>
    </BuildFields>
  );
}
