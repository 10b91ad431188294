import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { history } from '../../../test/kit/arbitrary-record.ts';
import { type TestApp, testApp } from '../../../test/kit/test-app.ts';
import { freeze } from '../freeze.ts';
import { importShop } from './import-shop.ts';
import { ShopRefused } from './read-shop.ts';
import { manifestName } from './shapes.ts';
import { shopZip, writeShopFolder } from './write-shop.ts';

let shop: TestApp;
let empty: TestApp;
let folder: string;
beforeEach(async () => {
  [shop, empty] = [await testApp(), await testApp()];
  folder = mkdtempSync(join(tmpdir(), 'fairbend-shop-'));
});
afterEach(async () => {
  await Promise.all([shop.close(), empty.close()]);
  rmSync(folder, { recursive: true, force: true });
});

const by = { writtenBy: 'Fairbend 0.0.0', madeAt: '2026-03-02T09:00:00.000Z' };
const png = readFileSync(new URL('../../../docs/figures/layout-sheet.png', import.meta.url));

/** Builds with the histories of several devices, a repair, a frozen print, a picture, one put away, the shop's own. */
async function fill(): Promise<void> {
  const histories = fc.sample(history, { numRuns: 6, seed: 12 });
  for (const [index, operations] of histories.entries())
    await shop.keeper.createWith('build', operations, `b-${index}`);
  const { keeper } = shop;
  const build = await keeper.create({
    kind: 'build',
    changes: [{ path: ['about', '-', 'title'], value: '../../etc <script> שלום 🎣' }],
  });
  await keeper.write(build.id, 'tag', [{ path: ['tags', 't', 'text'], value: 'club' }]);
  await freeze(keeper, build.id, '1.0.0');
  await keeper.write(build.id, 'label', [{ path: ['blank', '-', 'label'], value: 'Ä 7' }]);
  await freeze(keeper, build.id, '1.0.0');
  await keeper.repository.setGone(build.id, true);
  const ticket = await keeper.create({
    kind: 'ticket',
    changes: [{ path: ['job', '-', 'price'], value: 4550 }],
  });
  const { hash } = (await (await shop.ask('POST', '/api/attachments', new Uint8Array(png))).json()) as {
    hash: string;
  };
  await keeper.write(ticket.id, 'picture', [{ path: ['attachments', 'a', 'content'], value: hash }]);
  await keeper.shop();
  await keeper.write('shop', 'unit', [{ path: ['settings', '-', 'unitSystem'], value: 'mm' }]);
}

/** All that is stored but which record it is. */
async function rowsOf({ db }: TestApp) {
  return {
    documents: await db.selectFrom('documents').selectAll().orderBy('id').execute(),
    operations: await db.selectFrom('operations').selectAll().orderBy('document').orderBy('seq').execute(),
    revisions: await db.selectFrom('revisions').selectAll().orderBy('document').orderBy('revision').execute(),
    attachments: (await db.selectFrom('attachments').selectAll().orderBy('hash').execute()).map(
      ({ bytes, ...row }) => ({
        ...row,
        bytes: Buffer.from(bytes).toString('hex'),
      }),
    ),
  };
}

async function zipOf(app: TestApp): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of shopZip(app.keeper.repository, by)) pieces.push(piece);
  return Buffer.concat(pieces);
}

function put(name: string, bytes: Uint8Array): string {
  const file = join(folder, name);
  writeFileSync(file, bytes);
  return file;
}

const refusal = (source: string) =>
  importShop(empty.keeper.repository, source, folder).then(
    () => 'taken in',
    (error: unknown) => {
      if (!(error instanceof ShopRefused)) throw error;
      return error.message;
    },
  );

test('a whole shop goes out as a folder and comes back equal: documents, every change, prints, pictures', async () => {
  await fill();
  const out = join(folder, 'shop');
  await writeShopFolder(shop.keeper.repository, out, by);
  expect(readdirSync(out).sort()).toEqual(['attachments', 'builds', manifestName, 'repairs', 'shop.json']);
  const counts = await importShop(empty.keeper.repository, out);
  const before = await rowsOf(shop);
  expect(counts).toEqual({
    documents: before.documents.length,
    operations: before.operations.length,
    attachments: 1,
  });
  expect(before.documents.length).toBe(9);
  expect(before.revisions.length).toBe(2);
  expect(await rowsOf(empty)).toEqual(before);
});

test('the same as one archive, from the server’s own route; what came back goes out as the same files again', async () => {
  await fill();
  const response = await shop.ask('GET', '/api/shop/files');
  expect(response.headers.get('content-type')).toBe('application/zip');
  const file = put('shop.zip', new Uint8Array(await response.arrayBuffer()));
  await importShop(empty.keeper.repository, file, folder);
  expect(await rowsOf(empty)).toEqual(await rowsOf(shop));
  const [first, again] = [unzipSync(await zipOf(shop)), unzipSync(await zipOf(empty))];
  expect(again).toEqual(first);
  expect(readdirSync(folder)).toEqual(['shop.zip']);
});

test('a record that holds anything is not mixed with another', async () => {
  await fill();
  const file = put('shop.zip', await zipOf(shop));
  await empty.keeper.create({ kind: 'build' });
  expect(await refusal(file)).toMatch(/holds 1 documents already.*empty data folder/);
});

describe('refused with a reason, and nothing stored:', () => {
  const manifest = (files: object[] = []) =>
    strToU8(JSON.stringify({ format: 'fairbend shop', version: 1, ...by, files, attachments: [] }));
  /** 8 MB of one letter pack into about 8 kB. */
  const bomb = () => zipSync({ [manifestName]: manifest(), 'builds/b.json': new Uint8Array(8e6).fill(97) });

  test.each<[string, () => Promise<Uint8Array> | Uint8Array, RegExp]>([
    [
      'a path out of the folder',
      () => zipSync({ '../evil.json': strToU8('x') }),
      /"\.\.\/evil\.json", which no shop has/,
    ],
    ['an absolute path', () => zipSync({ '/etc/passwd': strToU8('x') }), /which no shop has/],
    ['a path with backslashes', () => zipSync({ 'builds\\..\\x.json': strToU8('x') }), /which no shop has/],
    ['a program', () => zipSync({ 'builds/run.sh': strToU8('x') }), /which no shop has/],
    ['no archive', () => strToU8('this is a letter'), /no archive of a shop/],
    [
      'an archive without its list',
      () => zipSync({ 'shop.json': strToU8('{}') }),
      /fairbend-shop\.json is missing/,
    ],
    [
      'a list of another thing',
      () => zipSync({ [manifestName]: strToU8('{"format":"x"}') }),
      /no list of a shop's files/,
    ],
    ['a newer shop', () => zipSync({ [manifestName]: strToU8('{"version":2}') }), /newer Fairbend/],
    ['half a file', async () => (await zipOf(shop)).slice(0, 3000), /cut short or damaged|is missing/],
  ])('%s', async (_, make, words) => {
    await fill();
    expect(await refusal(put('bad.zip', await make()))).toMatch(words);
    expect((await rowsOf(empty)).documents).toEqual([]);
    expect(readdirSync(folder)).toEqual(['bad.zip']);
  });

  test('a bomb is stopped while it unpacks', async () => {
    const { unpackShop } = await import('./unpack-shop.ts');
    const file = put('bomb.zip', bomb());
    mkdirSync(join(folder, 'out'));
    const limits = { timesTheArchive: 200, leastBytes: 1e5, mostBytes: 1e9, entries: 10 };
    expect(() => unpackShop(file, join(folder, 'out'), limits)).toThrow(
      /unpacks to more than an archive of this size/,
    );
    const left = readFileSync(join(folder, 'out', 'builds', 'b.json'));
    expect(left.length).toBeLessThan(200 * readFileSync(file).length + 1e5);
  });

  test.each<[string, (text: string) => string, RegExp]>([
    ['a build changed by hand', (text) => text.replace('club', 'clan'), /is not the file the manifest names/],
  ])('%s', async (_, change, words) => {
    await fill();
    const out = join(folder, 'shop');
    await writeShopFolder(shop.keeper.repository, out, by);
    const name = readdirSync(join(out, 'builds')).find((file) => file.startsWith('etc-script'))!;
    const file = join(out, 'builds', name);
    writeFileSync(file, change(readFileSync(file, 'utf8')));
    expect(await refusal(out)).toMatch(words);
  });

  test('a link in the place of a file is not followed', async () => {
    await fill();
    const out = join(folder, 'shop');
    await writeShopFolder(shop.keeper.repository, out, by);
    rmSync(join(out, 'shop.json'));
    symlinkSync('/etc/hostname', join(out, 'shop.json'));
    expect(await refusal(out)).toMatch(/shop\.json is no plain file/);
  });

  test('a history that no device could have written', async () => {
    await fill();
    const files = unzipSync(await zipOf(shop));
    const list = JSON.parse(new TextDecoder().decode(files[manifestName]));
    const name = 'shop.json';
    const text = new TextDecoder().decode(files[name]).replaceAll('"unitSystem"', '"unitSistem"');
    files[name] = strToU8(text);
    const { createHash } = await import('node:crypto');
    const entry = list.files.find((file: { name: string }) => file.name === name);
    Object.assign(entry, {
      bytes: files[name].length,
      sha256: createHash('sha256').update(files[name]).digest('hex'),
    });
    files[manifestName] = strToU8(JSON.stringify(list));
    expect(await refusal(put('odd.zip', zipSync(files)))).toMatch(
      /shop\.json: change \d+: settings has no field/,
    );
    expect((await rowsOf(empty)).documents).toEqual([]);
  });
});
