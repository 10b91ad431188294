import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { changesBackTo, type PastGesture, pastGestures } from '../../../record/past.ts';
import { instantWords } from '../../../words/intl.ts';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { reasonOf, useSnapshot } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { Part } from '../sheet/part.tsx';
import './history.css';
import { pastDeedText } from '../../../words/deeds.ts';
import { changeWords, type Teller, whoseWords } from '../../../words/history.ts';
import { KeptPictures } from './kept-pictures.tsx';

/** Changes shown at once; more by a press. */
const atOnce = 40;

/** Every change of this build, the latest first; any state between two of them can be brought back. */
export function HistorySheet() {
  const { store } = useBuild();
  const { document } = useSnapshot(store);
  const say = useSay();
  const [most, setMost] = useState(atOnce);
  const { unread } = store.past;
  // The log grows with the document, and with every look further back.
  const past = useMemo(
    () => (document ? pastGestures(store.operations(), unread) : []).reverse(),
    [store, document, unread],
  );
  const showEarlier = async () => {
    const wanted = most + atOnce;
    if (past.length < wanted && unread > 0) await store.past.readEarlier().catch(saying(say));
    setMost(wanted);
  };
  return (
    <Part title="History" aside={`${countWords(past.length, unread)}, none ever overwritten`}>
      <ol className="history">
        {past.slice(0, most).map((gesture, index) => (
          <li key={gesture.changes[0].id}>
            <PastLine past={gesture} latest={index === 0} />
          </li>
        ))}
      </ol>
      {(past.length > most || unread > 0) && (
        <Button className="button" onPress={() => void showEarlier()}>
          Show earlier ones
        </Button>
      )}
      <KeptPictures />
    </Part>
  );
}

function saying(say: (text: string) => void) {
  return (error: unknown) => say(`The earlier ones could not be read: ${reasonOf(error)}.`);
}

function countWords(read: number, unread: number): string {
  if (unread > 0) return `the newest ${read} changes`;
  return read === 1 ? '1 change' : `${read} changes`;
}

/** More values than these are counted, not listed. */
const mostListed = 12;

function PastLine({ past, latest }: { past: PastGesture; latest: boolean }) {
  const { store } = useBuild();
  const teller = useTeller();
  const [looking, setLooking] = useState(false);
  const { changes, at, device } = past;
  return (
    <>
      <p>
        <strong>{pastDeedText(past.gesture, teller.document.kind)}</strong>{' '}
        <span className="quiet">
          {instantWords(at)} · {whoseWords(device, store.device)}
        </span>
      </p>
      <Lines lines={changes.map(({ path, old, value }) => changeWords(path, old, value, teller))} />
      {!latest && (
        <Button className="plain screen-only" aria-expanded={looking} onPress={() => setLooking(!looking)}>
          {looking ? 'Close' : 'Look at the build as it stood then'}
        </Button>
      )}
      {looking && <Then past={past} done={() => setLooking(false)} />}
    </>
  );
}

function useTeller(): Teller {
  const { document } = useBuild();
  const { reader } = useShop();
  return { document, ...reader };
}

/** What would change, before anything does. */
function Then({ past, done }: { past: PastGesture; done(): void }) {
  const { store, document, write } = useBuild();
  const say = useSay();
  const teller = useTeller();
  const then = store.past.stateAfter(past.upTo);
  if (!then) return <p>Reading that state …</p>;
  const back = changesBackTo(then, document);
  if (back.length === 0) return <p>Nothing has changed since.</p>;
  const bringBack = () => {
    const [finding] = write('bringBack', back);
    if (finding) return say(`Nothing was brought back: ${finding.message}`);
    const count = back.length === 1 ? 'One value is' : `${back.length} values are`;
    say(`${count} as then. Undo takes it back.`);
    return done();
  };
  return (
    <div className="history-then">
      <p>Against now, {back.length === 1 ? 'one value differs' : `${back.length} values differ`}:</p>
      <Lines lines={back.map(({ path, from, value }) => changeWords(path, from, value, teller))} />
      <Button className="button" onPress={bringBack}>
        Bring this state back
      </Button>
    </div>
  );
}

function Lines({ lines }: { lines: readonly string[] }) {
  return (
    <ul className="quiet">
      {lines.slice(0, mostListed).map((line) => (
        <li key={line}>
          <Figure text={line} />
        </li>
      ))}
      {lines.length > mostListed && <li>and {lines.length - mostListed} more</li>}
    </ul>
  );
}
