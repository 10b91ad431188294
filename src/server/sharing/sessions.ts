import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { SharedSession } from '../../record/api.ts';
import { newId } from '../keeper.ts';
import { newToken, tokenHash } from './pairing.ts';

/** How long a paired device stays paired. */
export const sessionLivesMs = 30 * 24 * 3600 * 1000;

const stored = z.array(
  z.strictObject({ id: z.string(), name: z.string(), pairedAt: z.iso.datetime(), hash: z.string() }),
);
type Stored = z.infer<typeof stored>[number];

/**
 * The devices that were let in. They lie in a file of the data folder, not in the record: a restored backup must
 * not let a device in again that was shut out since.
 */
export class Sessions {
  private readonly file: string;
  private readonly now: () => Date;
  private entries: Stored[];

  constructor(dataFolder: string, now: () => Date) {
    this.file = join(dataFolder, 'sessions.json');
    this.now = now;
    this.entries = this.read();
  }

  /** Lets a device in; answers its secret, which is not kept. */
  begin(name: string): string {
    const token = newToken();
    const entry = { id: newId(), name, pairedAt: this.now().toISOString(), hash: tokenHash(token) };
    this.write([...this.entries, entry]);
    return token;
  }

  /** Whether this secret is of a device that is let in. */
  knows(token: string | undefined): boolean {
    if (!token) return false;
    const hash = tokenHash(token);
    return this.living().some((entry) => entry.hash === hash);
  }

  list(): SharedSession[] {
    return this.living().map(({ id, name, pairedAt }) => ({ id, name, pairedAt }));
  }

  end(id: string): void {
    this.write(this.entries.filter((entry) => entry.id !== id));
  }

  private living(): Stored[] {
    const oldest = this.now().getTime() - sessionLivesMs;
    return this.entries.filter((entry) => Date.parse(entry.pairedAt) > oldest);
  }

  private write(entries: Stored[]): void {
    writeFileSync(`${this.file}.part`, JSON.stringify(entries), { mode: 0o600 });
    renameSync(`${this.file}.part`, this.file);
    this.entries = entries;
  }

  /** A file that is missing or makes no sense lets nobody in. */
  private read(): Stored[] {
    try {
      return stored.parse(JSON.parse(readFileSync(this.file, 'utf8')));
    } catch {
      return [];
    }
  }
}
