import { createApi } from './api.ts';
import { writerName } from './device.ts';
import { DocumentStore } from './document-store.ts';
import { LiveFeed } from './live-feed.ts';
import { openOutbox } from './outbox.ts';

export const api = createApi((...request) => fetch(...request));

const fillRandom = (bytes: Uint8Array<ArrayBuffer>) => crypto.getRandomValues(bytes);
let shared: ReturnType<typeof makeShared> | undefined;

/** Opens a document of this server in this browser; one open store per document of a page is meant. */
export async function openDocument(id: string): Promise<DocumentStore> {
  shared ??= makeShared();
  const { feed, device, outbox } = shared;
  return DocumentStore.open(id, {
    api,
    feed,
    device,
    outbox: await outbox,
    fillRandom,
    now: () => new Date(),
  });
}

/** What all documents of the page share: one writer's name, one outbox, one connection. */
function makeShared() {
  const feed = new LiveFeed((address) => new EventSource(address));
  const follow = () => (document.visibilityState === 'hidden' ? feed.pause() : feed.resume());
  document.addEventListener('visibilitychange', follow);
  addEventListener('online', () => feed.reconnect());
  follow();
  return { feed, device: writerName(storageOrNone(), fillRandom), outbox: openOutbox() };
}

function storageOrNone(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}
