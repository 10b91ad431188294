import { Button } from 'react-aria-components';
import { useBuild } from '../read/build.tsx';
import type { SaveStatus } from '../store/sender.ts';

/** Whether every change is on the disk, and if not, where it is and what to do. */
export function SaveLine({ save }: { save: SaveStatus }) {
  const { dropRefused, retrySaving } = useBuild();
  switch (save.kind) {
    case 'saved':
      return <span>every change is on the disk</span>;
    case 'saving':
      return <span>saving {changes(save.pending)} …</span>;
    case 'kept':
      return (
        <span className="attention">
          {save.reason}; {changes(save.pending)} kept in this browser and sent when it answers.{' '}
          <Button className="inline" onPress={retrySaving}>
            Try now
          </Button>
        </span>
      );
    case 'refused':
      return (
        <span className="attention">
          The server did not take {changes(save.pending)}: {save.findings[0]?.message}{' '}
          <Button className="inline" onPress={dropRefused}>
            Give them up
          </Button>
        </span>
      );
  }
}

function changes(count: number): string {
  return count === 1 ? '1 change' : `${count} changes`;
}
