import { createWriteStream, existsSync, renameSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Repository } from '../server/repository.ts';
import { dataFolderOf, explained } from './backup-commands.ts';
import { CommandError, exitCodes } from './exit-codes.ts';

/** The whole shop as plain files, while a server may run. Answers what to say. */
export async function exportShop(options: { out: string; data?: string }): Promise<string> {
  const { shopZip, writeShopFolder } = await import('../server/shop-files/write-shop.ts');
  const { packageVersion } = await import('../server/serve.ts');
  const out = resolve(options.out);
  if (existsSync(out)) throw new CommandError(`${out} is there already. Give another name`, exitCodes.input);
  const by = { writtenBy: `Fairbend ${packageVersion()}`, madeAt: new Date().toISOString() };
  return withRecord(options.data, { mustExist: true }, async (repository) => {
    const documents = (await repository.documentIds()).length;
    if (!out.endsWith('.zip')) await writeShopFolder(repository, out, by);
    else {
      const part = `${out}.part`;
      try {
        await pipeline(Readable.from(shopZip(repository, by)), createWriteStream(part, { mode: 0o600 }));
        renameSync(part, out);
      } finally {
        rmSync(part, { force: true });
      }
    }
    return `${out}: ${documents} documents with their history and pictures. It names your customers: keep it as you keep the record\n`;
  });
}

/** An exported shop into an empty record. Answers what to say. */
export async function importShop(source: string, options: { data?: string }): Promise<string> {
  const { importShop: takeIn } = await import('../server/shop-files/import-shop.ts');
  return withRecord(options.data, { mustExist: false }, async (repository, place) => {
    const { documents, operations, attachments } = await takeIn(repository, resolve(source));
    return `${place}: ${documents} documents, ${operations} changes, ${attachments} pictures and papers, as they were\n`;
  });
}

/** On the data folder, or on PostgreSQL where DATABASE_URL names one and no folder is given. */
async function withRecord(
  data: string | undefined,
  { mustExist }: { mustExist: boolean },
  work: (repository: Repository, place: string) => Promise<string>,
): Promise<string> {
  const { openDatabase } = await import('../server/database.ts');
  const { SqlRepository } = await import('../server/sql-repository.ts');
  return explained(async () => {
    const address = data === undefined ? process.env.DATABASE_URL : undefined;
    const folder = address ? undefined : await dataFolderOf(data);
    if (mustExist && folder && !existsSync(folder.databaseFile))
      throw new CommandError(
        `${folder.path} holds no record. Give the right folder with --data`,
        exitCodes.input,
      );
    const { db } = await openDatabase(address ?? folder!.databaseFile);
    const repository = new SqlRepository(db);
    try {
      return await work(repository, folder?.path ?? 'PostgreSQL');
    } finally {
      await repository.close();
    }
  });
}
