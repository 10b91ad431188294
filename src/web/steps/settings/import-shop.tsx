import { useEffect, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { ShopImportAnswer, ShopImportStanding } from '../../../record/record-api.ts';
import { reasonOf } from '../../read/open-store.ts';
import { api } from '../../store/open-document.ts';
import '../../parts/work-bars.css';

const lookMs = 500;

type State =
  | { now: 'idle' }
  | { now: 'working'; stage: 'sending' | 'reading'; done: number; total: number }
  | { now: 'refused'; file: string; reason: string }
  | { now: 'done'; answer: ShopImportAnswer };

/** A shop's archive into a record that holds nothing yet: how far it is, what came of it, or why not. */
export function ImportShop() {
  const [standing, setStanding] = useState<ShopImportStanding>();
  const [trouble, setTrouble] = useState<string>();
  const [state, setState] = useState<State>({ now: 'idle' });
  useEffect(() => {
    api.shopImport().then(setStanding, (error: unknown) => setTrouble(reasonOf(error)));
  }, []);
  const take = async (files: FileList | null) => {
    const file = files?.[0];
    if (!file) return;
    try {
      setState({ now: 'done', answer: await sendAndWatch(file, setState) });
    } catch (error) {
      setState({ now: 'refused', file: file.name, reason: reasonOf(error) });
    }
  };
  if (trouble) return <p className="quiet">{trouble}.</p>;
  if (standing?.refusal) return <p className="quiet">To take a whole shop in: {standing.refusal}.</p>;
  return (
    <div>
      <FileTrigger acceptedFileTypes={['.zip', 'application/zip']} onSelect={take}>
        <Button className="button" isDisabled={!standing || state.now === 'working' || state.now === 'done'}>
          Take in a whole shop
        </Button>
      </FileTrigger>
      <p className="quiet">
        The archive that “Save the whole shop” made. Nothing but the demo is here yet, so its builds, history,
        pictures and settings take this record’s place; what stood here is kept beside it.
      </p>
      <Shown state={state} />
    </div>
  );
}

function Shown({ state }: { state: State }) {
  if (state.now === 'working') {
    const { stage, done, total } = state;
    const known = total > 0;
    return (
      <div className="job-state">
        <progress
          aria-label="How far the shop is"
          value={known ? done : undefined}
          max={known ? total : undefined}
        />
        <p role="status" className="quiet">
          {stage === 'sending'
            ? `Sent: ${megabytes(done)} of ${megabytes(total)} MB`
            : `Read and checked: ${done} of ${total} files`}{' '}
          <Button className="plain" onPress={() => void api.cancelShopImport().catch(() => undefined)}>
            Cancel
          </Button>
        </p>
      </div>
    );
  }
  if (state.now === 'refused')
    return (
      <p role="alert" className="attention">
        {state.file} was not taken in: {state.reason}. Nothing was changed.
      </p>
    );
  if (state.now === 'done') return <p role="status">{doneWords(state.answer)}</p>;
  return <div role="status" />;
}

function doneWords({ documents, operations, attachments, keptAs }: ShopImportAnswer): string {
  const kept = keptAs ? ` What stood here before is kept as ${keptAs}.` : '';
  return `Taken in: ${documents} builds and repairs, ${operations} changes, ${attachments} pictures and papers.${kept}`;
}

/** The browser tells how much is sent, then the server how much is read. */
async function sendAndWatch(file: File, show: (state: State) => void): Promise<ShopImportAnswer> {
  let sent = false;
  const looking = setInterval(() => {
    if (!sent) return;
    void api.shopImport().then(
      ({ stage, done, total }) => {
        if (sent && stage === 'reading') show({ now: 'working', stage: 'reading', done, total });
      },
      () => undefined,
    );
  }, lookMs);
  show({ now: 'working', stage: 'sending', done: 0, total: file.size });
  try {
    return await api.importShop(file, (done) => {
      show({ now: 'working', stage: 'sending', done, total: file.size });
      if (done >= file.size) sent = true;
    });
  } finally {
    sent = false;
    clearInterval(looking);
  }
}

function megabytes(bytes: number): string {
  return (bytes / 1024 ** 2).toFixed(1);
}
