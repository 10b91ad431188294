import { Button } from 'react-aria-components';
import { useBuild } from '../../read/build-context.ts';
import type { SaveStatus } from '../../store/sender.ts';
import { ConflictNotices } from './conflict-notices.tsx';

/** In few words, for the title block; what needs the builder stands in full in the banner. */
export function savedInBrief(save: SaveStatus): string {
  if (save.kind === 'saved') return 'every change is on the disk';
  if (save.kind === 'saving') return `saving ${changes(save.pending)} …`;
  return `${changes(save.pending)} not on the disk yet`;
}

/** What is not yet on the disk, said where it is seen, with what can be done; nothing while all is well. */
export function SaveBanner() {
  const { save, damage, conflicts } = useBuild();
  const trouble = save.kind === 'kept' || save.kind === 'refused';
  return (
    <div role="status" className={trouble || damage || conflicts.length > 0 ? 'save-banner' : 'save-quiet'}>
      {damage && <p>{damage}.</p>}
      {trouble && <Trouble save={save} />}
      <ConflictNotices />
    </div>
  );
}

function Trouble({ save }: { save: Extract<SaveStatus, { kind: 'kept' | 'refused' }> }) {
  const { dropRefused, retrySaving } = useBuild();
  if (save.kind === 'kept') {
    return (
      <p>
        {save.reason}. {changes(save.pending)}{' '}
        {save.onlyOnPage
          ? 'on this page alone, for this browser’s own store takes no more: leave the page open until it is saved.'
          : 'kept in this browser, to be sent when it answers.'}{' '}
        <Button className="inline" onPress={retrySaving}>
          Try now
        </Button>
      </p>
    );
  }
  return (
    <p>
      The server did not take {changes(save.pending)}: {save.findings[0]?.message}{' '}
      <Button className="inline" onPress={dropRefused}>
        Give them up
      </Button>
    </p>
  );
}

function changes(count: number): string {
  return count === 1 ? '1 change' : `${count} changes`;
}
