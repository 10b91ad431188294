import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { testApp } from '../../test/kit/test-app.ts';
import { workBuild } from '../engine/flow.ts';
import { readBuildFile } from '../record/file-read.ts';
import { readBuild } from '../record/read-build.ts';
import { readFinish } from '../record/read-finish.ts';
import { unitsOf, withHabits } from '../record/shop-habits.ts';
import { exportBuild, importBuild } from '../server/build-files.ts';
import { openBuild } from './open-build.ts';
import { workBuildFile } from './work-build-file.ts';

const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const habits = [
  { path: ['settings', '-', 'unitSystem'] as const, value: 'mm' },
  { path: ['wraps', '-', 'checkWrap'] as const, value: mm(14) },
  { path: ['finish', '-', 'partA'] as const, value: 3 },
];

test('a file carries the habits that applied: the command line has the screen’s numbers; the other shop keeps its own', async () => {
  const [app, other] = [await testApp(), await testApp()];
  const folder = mkdtempSync(join(tmpdir(), 'habits-'));
  const example = readFileSync('examples/two-piece-spigot.json', 'utf8');
  const { document } = await importBuild(app.keeper, example);
  const shop = await app.keeper.shop();
  await app.keeper.write(shop.id, 'habits', habits);
  const text = await exportBuild(app.keeper, document.id, { attachments: false, writtenBy: 'test' });
  const file = join(folder, 'build.json');
  writeFileSync(file, text);

  const [state, shopState] = [await app.keeper.state(document.id), await app.keeper.state(shop.id)];
  const onScreen = readBuild(withHabits(state, shopState), { tapeStep: unitsOf(shopState).tapeStep });
  const opened = openBuild(file);
  expect(opened.bench).toEqual(onScreen.bench);
  expect(opened.choices).toEqual(onScreen.choices);
  expect(opened.choices).not.toEqual(readBuild(state).choices);
  expect(workBuildFile(opened).work).toEqual(workBuild(onScreen.bench!, onScreen.choices!));

  const read = readBuildFile(text, '2026-03-01T09:00:00Z');
  if (read.status === 'refused') throw new Error(JSON.stringify(read.findings));
  expect(readFinish(withHabits(read.build.state, read.build.habits)).mix).toMatchObject({ partA: 3 });
  const taken = await importBuild(other.keeper, text);
  const otherShop = await other.keeper.shop();
  expect((await other.keeper.state(otherShop.id)).cells.size).toBe(0);
  expect((await other.keeper.state(taken.document.id)).cells.has('finish/-/partA')).toBe(false);
  for (const one of [app, other]) await one.close();
  rmSync(folder, { recursive: true });
});

test.each([
  ['rates', { hourly: 42 }, /carries no habit "rates\/hourly"/],
  ['finish', { partA: 'three' }, /partA/],
])('a file with a habit of %s that makes no sense is refused by name', (collection, fields, message) => {
  const { format, version, build } = JSON.parse(readFileSync('examples/two-piece-spigot.json', 'utf8'));
  const text = JSON.stringify({ format, version, build, habits: { [collection]: fields } });
  const read = readBuildFile(text, '2026-03-01T09:00:00Z');
  expect(read.status).toBe('refused');
  const [finding] = read.status === 'refused' ? read.findings : [];
  expect(`${finding.path}: ${finding.message}`).toMatch(message);
});
