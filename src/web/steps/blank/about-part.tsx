import { useState } from 'react';
import { rodKindOf } from '../../../engine/kinds/rod-kinds.ts';
import { readRodKind } from '../../../record/read-choices.ts';
import { Field } from '../../fields/field.tsx';
import { TagsField } from '../../fields/tags-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

/** What this build is called, for whom, and what kind of rod it becomes. */
export function AboutPart() {
  const { document, single, rows, newRowId, write } = useBuild();
  const about = single('about');
  const title = textOf(about, 'title');
  // Open for a new build, and left to the builder from then on.
  const [untitledAtFirst] = useState(title === undefined);
  const tags = rows('tags').map((row) => textOf(row, 'text'));
  const kind = readRodKind(document);
  // a rod without a fly line has its line's test under Layout
  const asksLineWeight = rodKindOf(kind).flyLine || textOf(about, 'lineWeight') !== undefined;
  const words = [title ?? 'Untitled build', textOf(about, 'customer'), kind, ...tags];
  return (
    <Part
      folded
      title="This build"
      aside={words.filter((word) => word !== undefined).join(' · ')}
      startOpen={untitledAtFirst}
      holds={['about/', 'tags/']}
    >
      <div className="fields-row">
        <Field path={['about', '-', 'title']} />
        <Field path={['about', '-', 'customer']} />
        {asksLineWeight && <Field path={['about', '-', 'lineWeight']} />}
        <Field path={['about', '-', 'rodKind']} />
        <TagsField rows={rows('tags')} newRowId={newRowId} write={write} />
      </div>
    </Part>
  );
}
