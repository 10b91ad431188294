import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';

const setUp = [
  'Handle and seat on, or a dummy of the same length; the reel or a stand-in in its place.',
  'Tip-top glued; guides held by thin tape, slices of latex tube or elastic thread.',
  'One light line through all guides, just taut by a small clip; the weight hangs as the load says.',
  'Butt at the layout’s angle, held at the grip only, never in front of it; bend plane upright.',
];

/** What has to stand before a weight is hung. */
export function PrepareList() {
  return (
    <Part
      folded
      holds={['blank/-/ferrulesBound']}
      title="Before the test"
      aside="common practice of builders’ load tests, no standard"
    >
      <ul>
        {setUp.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <Field path={['blank', '-', 'ferrulesBound']} />
    </Part>
  );
}
