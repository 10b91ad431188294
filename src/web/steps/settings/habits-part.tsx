import { useFieldPlace } from '../../fields/place.ts';
import { MixHabitFields, ProductFields } from '../../parts/habits/finish-fields.tsx';
import { HandleHabitFields } from '../../parts/habits/handle-fields.tsx';
import { LayoutHabitFields } from '../../parts/habits/layout-habit-fields.tsx';
import { SortingFields } from '../../parts/habits/sorting-fields.tsx';
import { ThreadFields, WrapHabitFields } from '../../parts/habits/wraps-fields.tsx';
import { Part } from '../../parts/sheet/part.tsx';

/** What holds in every build that says nothing of its own. */
export function HabitsPart() {
  const place = useFieldPlace();
  const byMass = place.value(['finish', '-', 'mixBy']) === 'mass';
  return (
    <Part
      folded
      title="Habits of this shop"
      aside="they hold where a build says nothing; an empty field says what holds: common practice with its range, no source"
    >
      <details>
        <summary>Handle: arbors, glue, reaming, room in check and tube</summary>
        <HandleHabitFields />
      </details>
      <details>
        <summary>Layout: limits, ferrules, friction, the knot</summary>
        <LayoutHabitFields />
      </details>
      <details>
        <summary>Guides: how straight is straight enough</summary>
        <SortingFields />
      </details>
      <details>
        <summary>Wraps: thread, lengths, ferrules, spools</summary>
        <WrapHabitFields />
        <h3>Usual threads</h3>
        <ThreadFields lots={false} />
      </details>
      <details>
        <summary>Finish: the product’s data sheet, mixing</summary>
        <ProductFields />
        <MixHabitFields byMass={byMass} />
      </details>
    </Part>
  );
}
