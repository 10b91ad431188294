import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, operation } from '../../../test/kit/one-operation.ts';
import { ChangeFeed } from '../change-feed.ts';
import { openDatabase } from '../database.ts';
import { Keeper } from '../keeper.ts';
import { attachmentRow } from '../sql-rows.ts';
import { openSqlite } from '../sqlite.ts';
import { copiedOtherwise } from '../vouch/copy-record.ts';
import { linked, noLink, sealedDocument } from '../vouch/seals.ts';
import { BackupRefused, writeArchive } from './archive.ts';
import { restoreBackup } from './restore-backup.ts';

describe('a backup from elsewhere', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'fairbend-foreign-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  const file = (name: string) => join(folder, name);
  const about = { record: 'r', madeAt: '2026-03-01T09:00:00Z', writtenBy: 'somebody', documents: 1 };

  /** A database made like ours, then changed by `sql` or `more`, packed as a backup that fits its manifest. */
  async function foreign(
    sql: string,
    more: (keeper: Keeper, build: string) => Promise<void> = async () => undefined,
  ) {
    const { db, repository } = await openDatabase(file('foreign.sqlite'));
    const keeper = new Keeper(repository, new ChangeFeed());
    const { id } = await keeper.create({
      kind: 'build',
      changes: [{ path: ['about', '-', 'title'], value: 'Brook' }],
    });
    await more(keeper, id);
    await db.destroy();
    const { database } = openSqlite(file('foreign.sqlite'));
    if (sql) database.exec(sql);
    database.exec('PRAGMA journal_mode=DELETE');
    database.close();
    await writeArchive(file('foreign.sqlite'), about, file('foreign.zip'));
    return id;
  }
  const restore = () => restoreBackup(file('foreign.zip'), file('data'), new Date('2026-03-02T09:00:00Z'));
  const opened = async () => {
    const { db, repository } = await openDatabase(file('data/fairbend.sqlite'));
    return { db, repository, keeper: new Keeper(repository, new ChangeFeed()) };
  };

  test.each([
    [
      'a trigger',
      `create trigger t after insert on operations begin update operations set new_value = '"evil"'; end`,
    ],
    ['a view', 'create view v as select * from operations'],
  ])('with %s is refused by its name', async (kind, sql) => {
    await foreign(sql);
    await expect(restore()).rejects.toThrow(BackupRefused);
    await expect(restore()).rejects.toThrow(
      new RegExp(`holds ${kind} "[tv]", which no backup made by Fairbend has`),
    );
    expect(readdirSync(file('data')).filter((name) => name.startsWith('fairbend'))).toEqual([]);
  });

  test('brings no table of its own, no script as a picture, and no clock that ends all editing', async () => {
    const id = await foreign('create table mine (x)', async (keeper, build) => {
      const script = new TextEncoder().encode('<script>alert(1)</script>');
      const hash = createHash('sha256').update(script).digest('hex');
      const row = attachmentRow({ hash, type: 'text/html', bytes: script }, at);
      const { db } = await openDatabase(file('foreign.sqlite'));
      await db.insertInto('attachments').values(row).execute();
      await keeper.repository.append(build, [operation(1_000_001, 'Lake')], at);
      const rows = await db.selectFrom('operations').where('document', '=', build).selectAll().execute();
      const last = rows.at(-1)!;
      const ran = linked(
        [{ ...last, clock: 2 ** 48, id: `d1-a.${2 ** 48}.0` }],
        rows.at(-2)?.link ?? noLink,
      )[0];
      await db.updateTable('operations').set(ran).where('id', '=', last.id).execute();
      const document = await db
        .selectFrom('documents')
        .where('id', '=', build)
        .selectAll()
        .executeTakeFirstOrThrow();
      const sealed = sealedDocument({ ...document, clock: 2 ** 48, head: ran.link });
      await db.updateTable('documents').set(sealed).where('id', '=', build).execute();
      await db.destroy();
    });
    const { copied } = await restore();
    expect(copied.renumbered).toEqual([id]);
    expect(copied.leftOut).toMatchObject([{ title: 'a picture' }]);
    expect(copiedOtherwise(copied).join(' ')).toMatch(
      /a picture was left out: .*counted anew, in the same order/,
    );
    const { db, keeper, repository } = await opened();
    const tables = await db.introspection.getTables();
    expect(tables.map(({ name }) => name)).not.toContain('mine');
    expect(await repository.attachmentNotes()).toEqual([]);
    expect((await keeper.findOrThrow(id)).title).toBe('Lake');
    await keeper.write(id, 'edit', [{ path: ['about', '-', 'title'], value: 'Pond' }]);
    expect((await keeper.state(id)).clock).toBeLessThan(10);
    await db.destroy();
  });

  test('with values no field takes leaves that build out and says so', async () => {
    const id = await foreign('', async (keeper, build) => {
      await keeper.repository.append(build, [operation(5, 'x', ['about', '-', 'noSuchField'])], at);
    });
    const { copied } = await restore();
    expect(copied.leftOut).toMatchObject([{ id, what: expect.stringMatching(/no field "noSuchField"/) }]);
    expect(copied.documents).toBe(0);
  });
});
