/**
 * What others do with whole records while benches edit: a large build file taken in, the shop of thousands of builds
 * exported, its proofs read. Invented data; runs until the benches are done, at least once.
 */
export interface BesideFound {
  fileMegabytes: number;
  buildsOnTheShelf: number;
  /** Of each, the longest. */
  importMs: number;
  exportMs: number;
  exportMegabytes: number;
  proofsMs: number;
}

/** Builds asked for at the same time. */
const atOnce = 20;

/** A shelf of so many builds, each with a few values. */
export async function fillShelf(address: string, builds: number): Promise<void> {
  for (let start = 0; start < builds; start += atOnce)
    await Promise.all(
      Array.from({ length: Math.min(atOnce, builds - start) }, (_, index) => {
        const title = `Invented rod ${start + index}`;
        const changes = [
          { path: ['about', '-', 'title'], value: title },
          { path: ['blank', '-', 'label'], value: `blank of ${title}` },
        ];
        return post(address, '/api/documents', JSON.stringify({ kind: 'build', changes }));
      }),
    );
}

export async function workBeside(address: string, builds: number, over: AbortSignal): Promise<BesideFound> {
  const file = buildFile(53_000);
  const found: BesideFound = {
    fileMegabytes: Math.round(file.length / 1e5) / 10,
    buildsOnTheShelf: builds,
    importMs: 0,
    exportMs: 0,
    exportMegabytes: 0,
    proofsMs: 0,
  };
  const longest = async (name: 'importMs' | 'exportMs' | 'proofsMs', work: () => Promise<number>) => {
    const start = performance.now();
    const bytes = await work();
    found[name] = Math.max(found[name], Math.round(performance.now() - start));
    return bytes;
  };
  do {
    await longest('importMs', () => post(address, '/api/files', file));
    found.exportMegabytes =
      Math.round((await longest('exportMs', () => get(address, '/api/shop/files'))) / 1e5) / 10;
    await longest('proofsMs', () => get(address, '/api/proofs'));
  } while (!over.aborted);
  return found;
}

/** A build whose one history has so many changes. */
function buildFile(changes: number): string {
  const value = (index: number) => ({ si: index / 1e6, text: `${index} thousandths of a millimetre` });
  const history = Array.from({ length: changes }, (_, index) => ({
    id: `load-a.${index + 1}.0`,
    device: 'load-a',
    clock: index + 1,
    gesture: `move guide.${index}`,
    path: ['guides', `g${index % 12}`, 'station'],
    old: index < 12 ? null : value(index - 12),
    value: value(index),
    at: '2026-03-01T09:00:00Z',
  }));
  const guides = history.slice(-12).map(({ path, value }) => ({ id: path[1], station: value }));
  return JSON.stringify({ format: 'fairbend build', version: 1, build: { guides }, history });
}

async function post(address: string, path: string, body: string): Promise<number> {
  const headers = { 'content-type': 'application/json' };
  return sizeOf(await fetch(address + path, { method: 'POST', headers, body }));
}

async function get(address: string, path: string): Promise<number> {
  return sizeOf(await fetch(address + path));
}

async function sizeOf(response: Response): Promise<number> {
  if (!response.ok) throw new Error(`${response.url}: ${await response.text()}`);
  return (await response.arrayBuffer()).byteLength;
}
