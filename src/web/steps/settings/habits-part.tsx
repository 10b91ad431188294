import { useFieldPlace } from '../../fields/place.ts';
import {
  HandleHabitFields,
  LayoutHabitFields,
  MixHabitFields,
  ProductFields,
  SortingFields,
  ThreadFields,
  WrapHabitFields,
} from '../../parts/habits/habit-fields.tsx';
import { Part } from '../../parts/sheet/part.tsx';

/** What holds in every build that says nothing of its own. */
export function HabitsPart() {
  const place = useFieldPlace();
  const [mixBy, ratioBy] = ['mixBy', 'ratioBy'].map((name) => place.value(['finish', '-', name]));
  return (
    <Part
      folded
      title="Habits of this shop"
      aside="used where a build has no figure of its own; grey numbers are common practice, no source"
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
        <ThreadFields underwrap lots={false} />
      </details>
      <details>
        <summary>Finish: the product’s data sheet, mixing</summary>
        <ProductFields />
        <MixHabitFields mixBy={mixBy} ratioBy={ratioBy} />
      </details>
    </Part>
  );
}
