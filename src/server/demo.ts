import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { DemoOffered, DocumentSummary } from '../record/api.ts';
import { readBuildFile } from '../record/file-read.ts';
import { type Change, pathOf } from '../record/operation.ts';
import { ConflictError, NotFoundError } from './errors.ts';
import { demoId, type Keeper } from './keeper.ts';

/** Puts the demo there at the first start, where a demo file came with the program. */
export async function plantDemo(keeper: Keeper, file: string, id = demoId): Promise<void> {
  if (await keeper.repository.find(id)) return;
  const changes = demoChanges(keeper, file);
  if (!changes) return;
  await keeper.createFrom('build', changes, id).catch((error: Error) => {
    // Another server process of the same database planted it at this moment.
    if (!(error instanceof ConflictError)) throw error;
  });
}

/** The demos that came with the program beside the first one, `demo-spinning.json` as `demo-spinning`. */
export async function demosOffered(keeper: Keeper, firstFile: string): Promise<DemoOffered[]> {
  const folder = dirname(firstFile);
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => moreDemos.test(name)) : [];
  return Promise.all(
    names.sort().map(async (name) => {
      const id = name.replace(/\.json$/, '');
      const { about } = JSON.parse(readFileSync(join(folder, name), 'utf8')).build;
      const standing = await keeper.repository.find(id);
      return { id, title: about.title, note: about.note, shown: standing !== undefined && !standing.gone };
    }),
  );
}
const moreDemos = /^demo-(?!build)[a-z-]+\.json$/;

/** Puts a demo of these on the shelf, or brings it back to what its file says. @throws NotFoundError */
export async function showDemo(keeper: Keeper, firstFile: string, id: string): Promise<DocumentSummary> {
  const file = join(dirname(firstFile), `${id}.json`);
  if (id !== demoId && !moreDemos.test(`${id}.json`)) throw new NotFoundError(`There is no demo ${id}`);
  return resetDemo(keeper, id === demoId ? firstFile : file, id);
}

/**
 * Brings the demo back to what its file says, by one more gesture: open pages follow at once, and its history
 * stays. @throws NotFoundError where there is none
 */
export async function resetDemo(keeper: Keeper, file: string, id = demoId): Promise<DocumentSummary> {
  const wanted = demoChanges(keeper, file);
  if (!wanted) throw new NotFoundError('No demo build came with this program');
  await plantDemo(keeper, file, id);
  const said = new Set(wanted.map((change) => change.path.join('/')));
  const cleared = [...(await keeper.state(id)).cells.keys()]
    .filter((key) => !said.has(key) && key !== 'about/-/createdAt')
    .map((key): Change => ({ path: pathOf(key), value: null }));
  await keeper.write(id, 'reset', [...wanted, ...cleared]);
  await keeper.repository.setGone(id, false);
  return keeper.findOrThrow(id);
}

/** The demo's values, marked as a demo whatever the file says. */
function demoChanges(keeper: Keeper, file: string): Change[] | undefined {
  if (!existsSync(file)) return undefined;
  const read = readBuildFile(readFileSync(file, 'utf8'), keeper.timestamp());
  if (read.status === 'refused') throw new Error(`${file}: ${read.findings[0].message}`);
  const values = [...read.build.state.cells].map(
    ([key, cell]): Change => ({ path: pathOf(key), value: cell.value }),
  );
  const own = values.filter((change) => change.path[2] !== 'createdAt');
  return [...own, { path: ['about', '-', 'demo'], value: true }];
}
