import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { WorkKind, WorkNote } from '../../record/record-api.ts';
import { useSay } from '../read/messages.tsx';
import { reasonOf } from '../read/open-store.ts';
import { api } from '../store/open-document.ts';
import './work-bars.css';

const lookMs = 700;

/** What each kind of work is called while it goes on. */
const names: Record<WorkKind, string> = {
  backup: 'Backing up',
  restore: 'Bringing the backup back',
  check: 'Reading the whole record',
  repair: 'Repairing',
  'shop out': 'Saving the whole shop',
  'shop in': 'Taking the shop in',
  'build out': 'Saving the build',
  'build in': 'Opening the build file',
};

/** Long work of these kinds: how far it is, and a way to call it off, for as long as it goes on. */
export function WorkBars({ kinds, onCancel }: { kinds: readonly WorkKind[]; onCancel?: () => void }) {
  const works = useWorks().filter(({ kind }) => kinds.includes(kind));
  const say = useSay();
  const cancel = ({ id, kind }: WorkNote) => {
    onCancel?.();
    return api.cancelWork(id).then(
      () => say(`${names[kind]}: called off. Nothing was changed.`),
      (error: unknown) => say(`${reasonOf(error)}.`),
    );
  };
  return (
    <>
      {works.map((work) => (
        <div key={work.id} className="job-state">
          <progress
            aria-label={names[work.kind]}
            value={work.total > 0 ? work.done : undefined}
            max={work.total > 0 ? work.total : undefined}
          />
          <p role="status" className="quiet">
            {names[work.kind]}
            {work.total > 0 && `: ${Math.floor((100 * work.done) / work.total)} %`}{' '}
            <Button className="plain" onPress={() => void cancel(work)}>
              Cancel
            </Button>
          </p>
        </div>
      ))}
    </>
  );
}

function useWorks(): readonly WorkNote[] {
  const [works, setWorks] = useState<readonly WorkNote[]>([]);
  useEffect(() => {
    // One question at a time; a server that is away is asked again.
    let timer: ReturnType<typeof setTimeout>;
    let left = false;
    const look = async () => {
      const found = await api.works().catch(() => ({ works: [] }));
      if (left) return;
      setWorks((before) => (before.length === 0 && found.works.length === 0 ? before : found.works));
      timer = setTimeout(look, lookMs);
    };
    void look();
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, []);
  return works;
}
