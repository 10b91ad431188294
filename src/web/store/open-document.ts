import { createApi } from './api.ts';
import { writerName } from './device.ts';
import { DocumentStore } from './document-store.ts';
import { flushOutbox } from './flush-outbox.ts';
import { LiveFeed } from './live-feed.ts';
import { openOutbox } from './outbox.ts';

export const api = createApi((...request) => fetch(...request));

/** Event of the window: what this page shows is no more; a backup was put in its place. */
export const recordReplaced = 'fairbend-record-replaced';

const fillRandom = (bytes: Uint8Array<ArrayBuffer>) => crypto.getRandomValues(bytes);
let shared: ReturnType<typeof makeShared> | undefined;

/** Opens a document of this server in this browser; one open store per document of a page is meant. */
export async function openDocument(id: string): Promise<DocumentStore> {
  shared ??= makeShared();
  const { feed, outbox } = shared;
  return DocumentStore.open(id, {
    api,
    feed,
    device: writerName(storageOrNone(), fillRandom),
    outbox: await outbox,
    fillRandom,
    now: () => new Date(),
  });
}

/** What all documents of the page share: one outbox, one connection. */
function makeShared() {
  const feed = new LiveFeed(
    (address) => new EventSource(address),
    1000,
    () => dispatchEvent(new Event(recordReplaced)),
  );
  const follow = () => (document.visibilityState === 'hidden' ? feed.pause() : feed.resume());
  document.addEventListener('visibilitychange', follow);
  addEventListener('online', () => feed.reconnect());
  follow();
  const outbox = openOutbox();
  void outbox.then((opened) => flushOutbox(api, opened));
  return { feed, outbox };
}

function storageOrNone(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}
