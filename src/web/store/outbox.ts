import type { Operation } from '../../record/operation.ts';
import { type BrowserStore, openBrowserStore } from './browser-store.ts';

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
    return inBrowserStore(await openBrowserStore('fairbend-outbox', 'operations', ['document', 'id']));
  } catch {
    return new LocalStorageOutbox(localStorage);
  }
}

function inBrowserStore(kept: BrowserStore): Outbox {
  return {
    add: (document, operations) =>
      kept.write((store) => {
        for (const operation of operations) store.put({ document, id: operation.id, operation });
      }),
    remove: (document, ids) =>
      kept.write((store) => {
        for (const id of ids) store.delete([document, id]);
      }),
    list: async (document) => {
      const range = IDBKeyRange.bound([document], [document, []]);
      const entries: { operation: Operation }[] = await kept.read((store) => store.getAll(range));
      return entries.map(({ operation }) => operation);
    },
    documents: async () => {
      const keys = (await kept.read((store) => store.getAllKeys())) as [string, string][];
      return [...new Set(keys.map(([document]) => document))];
    },
  };
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
