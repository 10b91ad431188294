/** One table of the browser's own database. */
export interface BrowserStore {
  /** Strict: what is said to be kept in this browser outlives its end and a power cut. */
  write(work: (store: IDBObjectStore) => void): Promise<void>;
  read<Value>(ask: (store: IDBObjectStore) => IDBRequest<Value>): Promise<Value>;
}

/** Refused where the browser gives no database: private windows of some. */
export async function openBrowserStore(
  database: string,
  table: string,
  keyPath: string | string[],
): Promise<BrowserStore> {
  const opened = await openDatabase(database, table, keyPath);
  const run = (mode: IDBTransactionMode, work: (store: IDBObjectStore) => void) =>
    new Promise<void>((resolve, reject) => {
      const transaction = opened.transaction(table, mode, { durability: 'strict' });
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error(`The browser kept no ${table}`));
      work(transaction.objectStore(table));
    });
  return {
    write: (work) => run('readwrite', work),
    read: async <Value>(ask: (store: IDBObjectStore) => IDBRequest<Value>) => {
      let request: IDBRequest<Value> | undefined;
      await run('readonly', (store) => {
        request = ask(store);
      });
      return (request as IDBRequest<Value>).result;
    },
  };
}

function openDatabase(name: string, table: string, keyPath: string | string[]): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(table, { keyPath });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error(`Another tab holds older ${table} open`));
  });
}
