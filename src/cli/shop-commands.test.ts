import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ChangeFeed } from '../server/change-feed.ts';
import { openDataFolder } from '../server/data-folder.ts';
import { openDatabase } from '../server/database.ts';
import { Keeper } from '../server/keeper.ts';
import { SqlRepository } from '../server/sql-repository.ts';
import { exportShop, importShop } from './shop-commands.ts';

const folder = mkdtempSync(join(tmpdir(), 'fairbend-shop-cli-'));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

beforeAll(async () => {
  const { db } = await openDatabase(openDataFolder(at('bench')).databaseFile);
  const keeper = new Keeper(new SqlRepository(db), new ChangeFeed());
  const { id } = await keeper.create({
    kind: 'build',
    changes: [{ path: ['about', '-', 'title'], value: 'Brook rod' }],
  });
  await keeper.write(id, 'rename', [{ path: ['about', '-', 'title'], value: 'Brook rod, again' }]);
  await keeper.create({
    kind: 'ticket',
    changes: [{ path: ['about', '-', 'title'], value: 'A broken tip' }],
  });
  await keeper.repository.close();
});

/** Every file of a folder but the list, which says when it was written. */
function filesOf(path: string): Record<string, string> {
  const names = readdirSync(path, { recursive: true }).map(String).sort();
  const files = names.filter((name) => statSync(join(path, name)).isFile() && name !== 'fairbend-shop.json');
  return Object.fromEntries(files.map((name) => [name, readFileSync(join(path, name), 'utf8')]));
}

test('a shop goes out as a folder and as an archive, into empty folders, and out again as the same files', async () => {
  expect(await exportShop({ out: at('plain'), data: at('bench') })).toMatch(/2 documents with their history/);
  await exportShop({ out: at('packed.zip'), data: at('bench') });
  for (const source of ['plain', 'packed.zip']) {
    const again = at(`again-from-${source.replace('.zip', '')}`);
    const said = await importShop(at(source), { data: at(`from-${source}`) });
    expect(said).toMatch(/2 documents, \d+ changes, 0 pictures/);
    await exportShop({ out: again, data: at(`from-${source}`) });
    expect(filesOf(again)).toEqual(filesOf(at('plain')));
  }
  const [build] = Object.values(filesOf(at('plain')));
  expect(build).toContain('"Brook rod"');
});

test.each<[string, () => Promise<string>, RegExp]>([
  ['a name that is taken', () => exportShop({ out: folder, data: at('bench') }), /is there already/],
  [
    'a folder without a record',
    () => exportShop({ out: at('x'), data: at('nothing-here') }),
    /holds no record/,
  ],
  [
    'a record that is not empty',
    () => importShop(at('plain'), { data: at('bench') }),
    /holds 2 documents already/,
  ],
  [
    'a source that is not there',
    () => importShop(at('nowhere'), { data: at('new') }),
    /There is no file or folder/,
  ],
  [
    'a folder that is no shop',
    () => importShop(at('bench'), { data: at('new') }),
    /fairbend-shop\.json is missing/,
  ],
])('%s is refused in words', async (_, work, words) => {
  await expect(work()).rejects.toThrow(words);
});

test('a letter in the place of an archive is refused, and the record stays empty', async () => {
  writeFileSync(at('letter.zip'), 'Dear Sir');
  await expect(importShop(at('letter.zip'), { data: at('new') })).rejects.toThrow(/no archive of a shop/);
  expect(await importShop(at('plain'), { data: at('new') })).toMatch(/2 documents/);
});
