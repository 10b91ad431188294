import { Button } from 'react-aria-components';
import type { Choices } from '../../../engine/flow/choices.ts';
import { rowChanges } from '../../../record/operation.ts';
import { useBuild } from '../../read/build-context.ts';

/** The assumed guides become rows of this build, to be chosen and measured one by one. */
export function TakeUpGuides({ choices }: { choices: Choices }) {
  const { write, newRowId } = useBuild();
  const takeUp = () =>
    write(
      'takeGuides',
      choices.guides.flatMap(({ kind, size }, order) => {
        const row = newRowId();
        return rowChanges('guides', row, { order, kind, size });
      }),
    );
  return (
    <p>
      {choices.guides.length} guides typical of this rod are assumed.{' '}
      <Button className="inline" onPress={takeUp}>
        Choose and measure them one by one
      </Button>
    </p>
  );
}
