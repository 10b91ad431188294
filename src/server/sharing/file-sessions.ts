import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { SharedSession } from '../../record/sharing-api.ts';
import { newId } from '../keeper.ts';
import { newToken, tokenHash } from './pairing.ts';
import { type Sessions, type StoredSession, sessionLivesMs } from './sessions.ts';

const stored = z.array(
  z.strictObject({ id: z.string(), name: z.string(), pairedAt: z.iso.datetime(), hash: z.string() }),
);

/**
 * Paired devices in a file of the data folder, not in the record: a restored backup must not let a device in
 * again that was shut out since.
 */
export class FileSessions implements Sessions {
  private readonly file: string;
  private readonly now: () => Date;
  private entries: StoredSession[];

  constructor(dataFolder: string, now: () => Date) {
    this.file = join(dataFolder, 'sessions.json');
    this.now = now;
    this.entries = this.read();
  }

  async begin(name: string): Promise<string> {
    const token = newToken();
    const entry = { id: newId(), name, pairedAt: this.now().toISOString(), hash: tokenHash(token) };
    this.write([...this.entries, entry]);
    return token;
  }

  async knows(token: string | undefined): Promise<boolean> {
    if (!token) return false;
    const hash = tokenHash(token);
    return this.living().some((entry) => entry.hash === hash);
  }

  async list(): Promise<SharedSession[]> {
    return this.living().map(({ id, name, pairedAt }) => ({ id, name, pairedAt }));
  }

  async end(id: string): Promise<void> {
    this.write(this.entries.filter((entry) => entry.id !== id));
  }

  /** As they are kept, for a move of the record. */
  living(): StoredSession[] {
    const oldest = this.now().getTime() - sessionLivesMs;
    return this.entries.filter((entry) => Date.parse(entry.pairedAt) > oldest);
  }

  /** Takes these in, beside the ones there are. */
  take(entries: readonly StoredSession[]): void {
    const known = new Set(this.entries.map(({ id }) => id));
    this.write([...this.entries, ...entries.filter(({ id }) => !known.has(id))]);
  }

  private write(entries: StoredSession[]): void {
    writeFileSync(`${this.file}.part`, JSON.stringify(entries), { mode: 0o600 });
    renameSync(`${this.file}.part`, this.file);
    this.entries = entries;
  }

  /** A file that is missing or makes no sense lets nobody in. */
  private read(): StoredSession[] {
    try {
      return stored.parse(JSON.parse(readFileSync(this.file, 'utf8')));
    } catch {
      return [];
    }
  }
}
