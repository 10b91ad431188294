import { useCallback, useEffect, useRef, useState } from 'react';
import type { Change } from '../../../record/operation.ts';
import { type Build, useBuild } from '../../read/build-context.ts';
import { reasonOf } from '../../read/open-store.ts';
import { pictureOutbox, type WaitingPicture } from '../../store/picture-outbox.ts';
import { isServerAway, photoChanges, sendPhoto } from './send-photo.ts';

export interface AddedPhotos {
  add(files: readonly File[], also?: readonly Change[]): Promise<void>;
  /** The name of the one under way. */
  sending: string | undefined;
  troubles: readonly string[];
  /** Added since the page was opened. */
  added: number;
  /** Kept on this device until the server is there again. */
  waiting: number;
  /** Rows of the pictures sent from this page. */
  own: ReadonlySet<string>;
}

const triedAgainMs = 4000;

/** Sends pictures and puts them into a test, one after the other; one that cannot be sent now is kept and sent later. */
export function useAddPhotos(test: string, takenBy: string): AddedPhotos {
  const build = useBuild();
  const latest = useRef(build);
  latest.current = build;
  const [sending, setSending] = useState<string>();
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const [waiting, setWaiting] = useState(0);
  const [added, setAdded] = useState(0);
  // not a state: the record's own change is drawn before a state's that was set just before it
  const own = useRef(new Set<string>());
  const busy = useRef(Promise.resolve());

  const sendAll = useCallback(async () => {
    const outbox = await pictureOutbox();
    for (const picture of await outbox.of(latest.current.id, test)) {
      setSending(picture.name);
      try {
        await send(latest.current, picture, () => own.current.add(picture.id));
        setAdded((count) => count + 1);
      } catch (error) {
        if (isServerAway(error)) break;
        const reason = reasonOf(error).replace(/\.$/, '');
        setTroubles((said) => [...said, `${reason}.`]);
      }
      await outbox.drop(picture.id);
    }
    setSending(undefined);
    setWaiting((await outbox.of(latest.current.id, test)).length);
  }, [test]);
  const queue = useCallback(() => {
    busy.current = busy.current.then(sendAll, sendAll);
    return busy.current;
  }, [sendAll]);

  useEffect(() => {
    void queue();
    addEventListener('online', queue);
    return () => removeEventListener('online', queue);
  }, [queue]);
  useEffect(() => {
    if (waiting === 0) return;
    const timer = setInterval(queue, triedAgainMs);
    return () => clearInterval(timer);
  }, [waiting, queue]);

  const add = async (files: readonly File[], also: readonly Change[] = []) => {
    setTroubles([]);
    const outbox = await pictureOutbox();
    for (const [i, file] of files.entries()) {
      const ids = { id: build.newRowId(), attachment: build.newRowId() };
      const { name, type } = file;
      const bytes = await file.arrayBuffer();
      const more = i === 0 ? also : [];
      await outbox.keep({ ...ids, build: build.id, test, takenBy, name, type, bytes, also: more });
    }
    await queue();
  };
  return { add, sending, troubles, added, waiting, own: own.current };
}

/** `known` is called before the picture stands in the record: who shows it must know by then that it is of this page. */
async function send(build: Build, picture: WaitingPicture, known: () => void) {
  const { id, attachment, test, takenBy, name, type, bytes, also } = picture;
  const sent = await sendPhoto(new File([bytes], name, { type }));
  known();
  const order = build.rows('loadPhotos').length + 1;
  const changes = photoChanges(sent, { test, order, takenBy, ids: { attachment, photo: id } });
  const findings = build.write('addPicture', [...also, ...changes]);
  if (findings[0]) throw new Error(findings[0].message);
}
