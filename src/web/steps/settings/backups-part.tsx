import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { BackupNote } from '../../../record/record-api.ts';
import { instantWords } from '../../../words/intl.ts';
import { AskFirst } from '../../parts/sheet/ask-first.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { WorkBars } from '../../parts/work-bars.tsx';
import { useSay } from '../../read/messages.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';

/** Backups the server made by itself, one more by a press, each to be taken away to another disk. */
export function BackupsPart() {
  const say = useSay();
  const [notes, setNotes] = useState<readonly BackupNote[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const { busy, attempt } = useAttempt();
  const list = () =>
    api.backups().then(
      ({ backups }) => setNotes(backups),
      (error: unknown) => setTrouble(reasonOf(error)),
    );
  useEffect(() => void list(), []);
  const make = () =>
    attempt('No backup was made', async () => {
      await api.makeBackup();
      await list();
      say('A backup is made and checked. Keep a copy of it on another disk.');
    });
  const restore = ({ name, madeAt }: BackupNote) =>
    attempt('Nothing was put in place', async () => {
      const { keptAs, otherwise } = await api.restoreBackup(name);
      for (const sentence of otherwise) say(sentence);
      const before = keptAs ? ` What stood there before is kept as ${keptAs}.` : '';
      say(`The backup of ${instantWords(madeAt)} stands in place.${before}`);
      await list();
    });
  return (
    <Part
      title="Backups"
      aside="made at each start and daily; 7 days, 8 weeks, 12 months are kept"
      tools={
        <Button className="button" onPress={make} isDisabled={busy || trouble !== undefined}>
          {busy ? 'Backing up …' : 'Back up now'}
        </Button>
      }
    >
      <WorkBars kinds={['backup', 'restore']} />
      {trouble ? <p>{trouble}.</p> : <BackupList notes={notes} busy={busy} restore={restore} />}
      <p className="quiet">
        They lie beside the record: a copy on another disk is what survives a broken one. What a backup takes
        the place of is kept. A copy from another disk is brought back by “npm run fairbend -- restore FILE”.
      </p>
    </Part>
  );
}

/** More are in the folder; these are the ones somebody looks for. */
const mostListed = 10;

interface BackupListProps {
  notes: readonly BackupNote[];
  busy: boolean;
  restore(note: BackupNote): Promise<void>;
}

function BackupList({ notes, busy, restore }: BackupListProps) {
  if (notes.length === 0) return <p>None yet.</p>;
  return (
    <ul>
      {notes.slice(0, mostListed).map((note) => {
        const { name, bytes } = note;
        const made = instantWords(note.madeAt);
        return (
          <li key={name}>
            <a href={api.backupAddress(name)} download>
              {made}
            </a>{' '}
            <span className="quiet">{Math.ceil(bytes / 1024)} kB</span>{' '}
            <AskFirst
              ask={
                <>
                  Bring back<span className="visually-hidden"> the backup of {made}</span>
                </>
              }
              deed={busy ? 'Bringing back …' : 'Bring it back'}
              busy={busy}
              carryOut={() => restore(note)}
            >
              All builds will be as they were at {made}; what stands now is put aside, not lost.
            </AskFirst>
          </li>
        );
      })}
    </ul>
  );
}
