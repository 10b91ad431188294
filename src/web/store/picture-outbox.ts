import type { Change } from '../../record/operation.ts';

/** A picture that is not on the server yet, with where it goes. Its rows have their ids already: sent twice, it is one. */
export interface WaitingPicture {
  /** Of its row among the pictures. */
  id: string;
  attachment: string;
  build: string;
  test: string;
  takenBy: string;
  name: string;
  type: string;
  bytes: ArrayBuffer;
  /** Written together with it. */
  also: readonly Change[];
}

/** Where pictures wait until the server has them, so that a lost network or a closed page loses none. */
export interface PictureOutbox {
  keep(picture: WaitingPicture): Promise<void>;
  drop(id: string): Promise<void>;
  /** In the order they were kept. */
  of(build: string, test: string): Promise<WaitingPicture[]>;
}

let opened: Promise<PictureOutbox> | undefined;

/** The browser's database; where that is not to be had, this page's memory. */
export function pictureOutbox(): Promise<PictureOutbox> {
  opened ??= openDatabase().then(
    (database) => new StoredPictures(database),
    () => new HeldPictures(),
  );
  return opened;
}

const storeName = 'pictures';

class StoredPictures implements PictureOutbox {
  private readonly database: IDBDatabase;
  constructor(database: IDBDatabase) {
    this.database = database;
  }

  async keep(picture: WaitingPicture): Promise<void> {
    await this.run('readwrite', (store) => store.put({ ...picture, keptAt: Date.now() }));
  }

  async drop(id: string): Promise<void> {
    await this.run('readwrite', (store) => store.delete(id));
  }

  async of(build: string, test: string): Promise<WaitingPicture[]> {
    let request: IDBRequest<(WaitingPicture & { keptAt: number })[]> | undefined;
    await this.run('readonly', (store) => {
      request = store.getAll();
    });
    return (request?.result ?? [])
      .filter((picture) => picture.build === build && picture.test === test)
      .sort((a, b) => a.keptAt - b.keptAt);
  }

  private run(mode: IDBTransactionMode, work: (store: IDBObjectStore) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      const transaction = this.database.transaction(storeName, mode, { durability: 'strict' });
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('The browser kept no picture'));
      work(transaction.objectStore(storeName));
    });
  }
}

/** Lost with the page. */
class HeldPictures implements PictureOutbox {
  private readonly held = new Map<string, WaitingPicture>();

  async keep(picture: WaitingPicture): Promise<void> {
    this.held.set(picture.id, picture);
  }

  async drop(id: string): Promise<void> {
    this.held.delete(id);
  }

  async of(build: string, test: string): Promise<WaitingPicture[]> {
    return [...this.held.values()].filter((picture) => picture.build === build && picture.test === test);
  }
}

function openDatabase(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('fairbend-pictures', 1);
    request.onupgradeneeded = () => request.result.createObjectStore(storeName, { keyPath: 'id' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('Another tab holds older pictures open'));
  });
}
