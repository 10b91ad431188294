import type { Operation } from '../../record/operation.ts';

/**
 * Where operations wait until the server has acknowledged them, so that a closed or killed tab loses none.
 * Every tab of the browser sees the same outbox; sending an operation twice is harmless.
 */
export interface Outbox {
  add(document: string, operations: readonly Operation[]): Promise<void>;
  remove(document: string, ids: readonly string[]): Promise<void>;
  list(document: string): Promise<Operation[]>;
  /** The documents anything waits for. */
  documents(): Promise<string[]>;
}

/** The browser's database; where that is not to be had (private windows of some browsers), its local storage. */
export async function openOutbox(): Promise<Outbox> {
  try {
    return new IndexedDbOutbox(await openDatabase(indexedDB));
  } catch {
    return new LocalStorageOutbox(localStorage);
  }
}

const storeName = 'operations';

class IndexedDbOutbox implements Outbox {
  private readonly database: IDBDatabase;
  constructor(database: IDBDatabase) {
    this.database = database;
  }

  async add(document: string, operations: readonly Operation[]): Promise<void> {
    await this.run('readwrite', (store) => {
      for (const operation of operations) store.put({ document, id: operation.id, operation });
    });
  }

  async remove(document: string, ids: readonly string[]): Promise<void> {
    await this.run('readwrite', (store) => {
      for (const id of ids) store.delete([document, id]);
    });
  }

  async list(document: string): Promise<Operation[]> {
    const range = IDBKeyRange.bound([document], [document, []]);
    let request: IDBRequest<{ operation: Operation }[]> | undefined;
    await this.run('readonly', (store) => {
      request = store.getAll(range);
    });
    return (request?.result ?? []).map((entry) => entry.operation);
  }

  async documents(): Promise<string[]> {
    let request: IDBRequest<IDBValidKey[]> | undefined;
    await this.run('readonly', (store) => {
      request = store.getAllKeys();
    });
    return [...new Set((request?.result ?? []).map((key) => String((key as [string, string])[0])))];
  }

  private run(mode: IDBTransactionMode, work: (store: IDBObjectStore) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      // Strict: what is said to be kept in this browser outlives its end and a power cut.
      const transaction = this.database.transaction(storeName, mode, { durability: 'strict' });
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('The browser gave the outbox up'));
      work(transaction.objectStore(storeName));
    });
  }
}

function openDatabase(factory: IDBFactory): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = factory.open('fairbend-outbox', 1);
    request.onupgradeneeded = () =>
      request.result.createObjectStore(storeName, { keyPath: ['document', 'id'] });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('Another tab holds an older outbox open'));
  });
}

/** One entry per operation: tabs never overwrite each other's. */
export class LocalStorageOutbox implements Outbox {
  private readonly storage: Storage;
  constructor(storage: Storage) {
    this.storage = storage;
  }

  async add(document: string, operations: readonly Operation[]): Promise<void> {
    for (const operation of operations)
      this.storage.setItem(prefixOf(document) + operation.id, JSON.stringify(operation));
  }

  async remove(document: string, ids: readonly string[]): Promise<void> {
    for (const id of ids) this.storage.removeItem(prefixOf(document) + id);
  }

  async list(document: string): Promise<Operation[]> {
    return this.keys(prefixOf(document)).map(
      (key) => JSON.parse(this.storage.getItem(key) ?? 'null') as Operation,
    );
  }

  async documents(): Promise<string[]> {
    return [...new Set(this.keys(folder).map((key) => key.split('/')[1]))];
  }

  private keys(prefix: string): string[] {
    const all = Array.from({ length: this.storage.length }, (_, index) => this.storage.key(index) ?? '');
    return all.filter((key) => key.startsWith(prefix));
  }
}

const folder = 'fairbend-outbox/';

function prefixOf(document: string): string {
  return `${folder}${document}/`;
}
