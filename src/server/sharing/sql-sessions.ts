import type { Kysely } from 'kysely';
import type { SharedSession } from '../../record/sharing-api.ts';
import { newId } from '../keeper.ts';
import type { Tables } from '../tables.ts';
import { newToken, tokenHash } from './pairing.ts';
import { type Sessions, sessionLivesMs } from './sessions.ts';

/** Paired devices in the database that several server processes share: let in by one, known to all. */
export class SqlSessions implements Sessions {
  private readonly db: Kysely<Tables>;
  private readonly now: () => Date;

  constructor(db: Kysely<Tables>, now: () => Date) {
    this.db = db;
    this.now = now;
  }

  async begin(name: string): Promise<string> {
    const token = newToken();
    await this.db.deleteFrom('sessions').where('paired_at', '<=', this.oldest()).execute();
    await this.db
      .insertInto('sessions')
      .values({ id: newId(), name, paired_at: this.now().toISOString(), hash: tokenHash(token) })
      .execute();
    return token;
  }

  async knows(token: string | undefined): Promise<boolean> {
    if (!token) return false;
    const found = await this.living().where('hash', '=', tokenHash(token)).select('id').executeTakeFirst();
    return found !== undefined;
  }

  async list(): Promise<SharedSession[]> {
    const found = await this.living().select(['id', 'name', 'paired_at']).orderBy('paired_at').execute();
    return found.map(({ id, name, paired_at }) => ({ id, name, pairedAt: paired_at }));
  }

  async end(id: string): Promise<void> {
    await this.db.deleteFrom('sessions').where('id', '=', id).execute();
  }

  private living() {
    return this.db.selectFrom('sessions').where('paired_at', '>', this.oldest());
  }

  /** ISO instants in UTC compare as texts. */
  private oldest(): string {
    return new Date(this.now().getTime() - sessionLivesMs).toISOString();
  }
}
