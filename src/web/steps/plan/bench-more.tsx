import { Button } from 'react-aria-components';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBuild } from '../../read/build-context.ts';
import { useBenchView } from '../../read/colours.ts';
import { logQuarter } from './log-quarter.ts';

/** What is seldom pressed at the bench: it lies under the card and gives way to the large button. */
export function BenchMore({ stage }: { stage: string }) {
  const { rows, write, newRowId } = useBuild();
  const { bench, setBench } = useBenchView();
  const log = () => write('logQuarter', logQuarter(newRowId(), { order: rows('hours').length, stage }));
  return (
    <p className="bench-more">
      <Button className="plain" onPress={log}>
        + 1/4 h on {stepName(stage).toLowerCase()}
      </Button>
      <Button className="plain" aria-pressed={bench} onPress={() => setBench(!bench)}>
        {bench ? 'Smaller on this device' : 'Larger on this device'}
      </Button>
    </p>
  );
}
