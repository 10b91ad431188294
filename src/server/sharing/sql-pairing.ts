import type { Kysely } from 'kysely';
import type { Tables } from '../tables.ts';
import {
  codeHash,
  codeLivesMs,
  makeLetters,
  type PairingCode,
  type PairingCodes,
  wrongTries,
} from './pairing.ts';

/** As many as there may be servers that each show one; together they are guessed as hardly as one. */
const mostStanding = 3;

/** Pairing codes in the database that several server processes share. A wrong try counts against all of them. */
export class SqlPairing implements PairingCodes {
  private readonly db: Kysely<Tables>;
  private readonly now: () => Date;

  constructor(db: Kysely<Tables>, now: () => Date) {
    this.db = db;
    this.now = now;
  }

  async makeCode(): Promise<PairingCode> {
    const code = makeLetters();
    const expiresAt = new Date(this.now().getTime() + codeLivesMs).toISOString();
    await this.db.transaction().execute(async (trx) => {
      await trx
        .insertInto('pairing_codes')
        .values({ hash: codeHash(code), ends_at: expiresAt, tries_left: wrongTries })
        .execute();
      const standing = await trx
        .selectFrom('pairing_codes')
        .select('hash')
        .orderBy('ends_at', 'desc')
        .execute();
      const old = standing.slice(mostStanding).map(({ hash }) => hash);
      if (old.length > 0) await trx.deleteFrom('pairing_codes').where('hash', 'in', old).execute();
    });
    return { code, expiresAt };
  }

  async accept(typed: string): Promise<boolean> {
    const now = this.now().toISOString();
    return this.db.transaction().execute(async (trx) => {
      await trx
        .deleteFrom('pairing_codes')
        .where((e) => e.or([e('ends_at', '<=', now), e('tries_left', '<=', 0)]))
        .execute();
      const used = await trx
        .deleteFrom('pairing_codes')
        .where('hash', '=', codeHash(typed))
        .returning('hash')
        .executeTakeFirst();
      if (used) return true;
      await trx
        .updateTable('pairing_codes')
        .set((e) => ({ tries_left: e('tries_left', '-', 1) }))
        .execute();
      return false;
    });
  }
}
