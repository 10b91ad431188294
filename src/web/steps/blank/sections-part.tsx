import { Button } from 'react-aria-components';
import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import type { DiameterRow } from '../../../engine/bench/diameter-profile.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { numberOf, textOf } from '../../read/values.ts';
import { BlankDrawing } from './blank-drawing.tsx';
import { BlankTable } from './blank-table.tsx';
import { SectionCard } from './section-card.tsx';
import { StartBlank } from './start-blank.tsx';

interface SectionsPartProps {
  /** The blank put together; undefined while something needed for it is missing. */
  blank: AssembledBlank | undefined;
  profile: readonly DiameterRow[];
}

/** The sections from the tip down: the drawing, and under it what was measured of each. */
export function SectionsPart({ blank, profile }: SectionsPartProps) {
  const { rows } = useBuild();
  const { add, remove } = useSectionChanges();
  const sections = rows('sections');
  const isSized = (id: string) =>
    rows('diameters').some(({ fields }) => fields.section === id && fields.outside);
  if (sections.length === 0) {
    return (
      <Part title="Sections" anchor="sections">
        <StartBlank />
      </Part>
    );
  }
  const firstOpen = sections.findIndex(({ fields, id }) => !fields.length || !isSized(id));
  return (
    <Part
      title="Sections"
      anchor="sections"
      aside="from the tip down, each measured from its own tip-side end"
      tools={
        <Button className="plain" onPress={add}>
          Add a section at the butt
        </Button>
      }
    >
      {blank && (
        <>
          <BlankDrawing blank={blank} profile={profile} />
          <BlankTable blank={blank} />
        </>
      )}
      <div className="section-cards" data-group="leads">
        {sections.map((section, index) => (
          <SectionCard
            key={section.id}
            section={section}
            index={index}
            below={sections[index + 1]}
            startOpen={index === firstOpen}
            diameters={rows('diameters').filter((row) => row.fields.section === section.id)}
            onRemove={() => remove(section.id)}
          />
        ))}
      </div>
    </Part>
  );
}

function useSectionChanges() {
  const { rows, write, newRowId } = useBuild();
  const say = useSay();
  const add = () => {
    const sections = rows('sections');
    const last = numberOf(sections[sections.length - 1], 'order') ?? sections.length - 1;
    const joint = textOf(sections[0], 'joint') ?? 'sleeve';
    const id = newRowId();
    write('addSection', [
      { path: ['sections', id, 'order'], value: last + 1 },
      { path: ['sections', id, 'part'], value: 'added' },
      { path: ['sections', sections[sections.length - 1].id, 'joint'], value: joint },
    ]);
  };
  const remove = (id: string) => {
    write('removeSection', [{ path: ['sections', id, 'gone'], value: true }]);
    say('The section is removed; undo brings it back.');
  };
  return { add, remove };
}
