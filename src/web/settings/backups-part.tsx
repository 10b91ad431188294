import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { BackupNote } from '../../record/api.ts';
import { reasonOf } from '../read/open-store.ts';
import { useSay } from '../shell/messages.tsx';
import { Part } from '../shell/part.tsx';
import { api } from '../store/open-document.ts';

/** Backups the server made by itself, one more by a press, each to be taken away to another disk. */
export function BackupsPart() {
  const say = useSay();
  const [notes, setNotes] = useState<readonly BackupNote[]>([]);
  const [trouble, setTrouble] = useState<string>();
  const [busy, setBusy] = useState(false);
  const list = () =>
    api.backups().then(
      ({ backups }) => setNotes(backups),
      (error: unknown) => setTrouble(reasonOf(error)),
    );
  useEffect(() => void list(), []);
  const make = async () => {
    setBusy(true);
    try {
      await api.makeBackup();
      await list();
      say('A backup is made and checked. Keep a copy of it on another disk.');
    } catch (error) {
      say(`No backup was made: ${reasonOf(error)}.`);
    } finally {
      setBusy(false);
    }
  };
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
      {trouble ? <p>{trouble}.</p> : <BackupList notes={notes} />}
      <p className="quiet">
        They lie beside the record: a copy on another disk is what survives a broken one. To bring one back,
        end Fairbend and run “npm run fairbend -- restore FILE”; what stood there before is kept.
      </p>
    </Part>
  );
}

/** More are in the folder; these are the ones somebody looks for. */
const mostListed = 10;

function BackupList({ notes }: { notes: readonly BackupNote[] }) {
  if (notes.length === 0) return <p>None yet.</p>;
  return (
    <ul>
      {notes.slice(0, mostListed).map(({ name, madeAt, bytes }) => (
        <li key={name}>
          <a href={api.backupAddress(name)} download>
            {new Date(madeAt).toLocaleString()}
          </a>{' '}
          <span className="quiet">{Math.ceil(bytes / 1024)} kB</span>
        </li>
      ))}
    </ul>
  );
}
