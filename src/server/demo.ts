import { existsSync, readFileSync } from 'node:fs';
import type { DocumentSummary } from '../record/api.ts';
import { readBuildFile } from '../record/file-read.ts';
import { type Change, pathOf } from '../record/operation.ts';
import { ConflictError, NotFoundError } from './errors.ts';
import { demoId, type Keeper } from './keeper.ts';

/** Puts the demo there at the first start, where a demo file came with the program. */
export async function plantDemo(keeper: Keeper, file: string): Promise<void> {
  if (await keeper.repository.find(demoId)) return;
  const changes = demoChanges(keeper, file);
  if (!changes) return;
  await keeper.createFrom('build', changes, demoId).catch((error: Error) => {
    // Another server process of the same database planted it at this moment.
    if (!(error instanceof ConflictError)) throw error;
  });
}

/**
 * Brings the demo back to what its file says, by one more gesture: open pages follow at once, and its history
 * stays. @throws NotFoundError where there is none
 */
export async function resetDemo(keeper: Keeper, file: string): Promise<DocumentSummary> {
  const wanted = demoChanges(keeper, file);
  if (!wanted) throw new NotFoundError('No demo build came with this program');
  await plantDemo(keeper, file);
  const said = new Set(wanted.map((change) => change.path.join('/')));
  const cleared = [...(await keeper.state(demoId)).cells.keys()]
    .filter((key) => !said.has(key) && key !== 'about/-/createdAt')
    .map((key): Change => ({ path: pathOf(key), value: null }));
  await keeper.write(demoId, 'reset', [...wanted, ...cleared]);
  await keeper.repository.setGone(demoId, false);
  return keeper.findOrThrow(demoId);
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
