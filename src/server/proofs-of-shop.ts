import { setImmediate as breathe } from 'node:timers/promises';
import type { ProofsAnswer } from '../record/api.ts';
import { readProofs } from '../record/read-proofs.ts';
import { readSingle } from '../record/read-values.ts';
import { DamagedError } from './errors.ts';
import type { Keeper } from './keeper.ts';

type Build = ProofsAnswer['builds'][number];

/** Builds read at once from the list. */
const page = 200;

/**
 * The proofs of every build of the shop that has any; the demo, which nobody hung, is left out. What was read of a
 * build is kept until it changes.
 */
export class ProofsOfShop {
  private readonly keeper: Keeper;
  private reading: Promise<ProofsAnswer> | undefined;
  private readonly kept = new Map<string, { lastSeq: number; build: Build | undefined }>();

  constructor(keeper: Keeper) {
    this.keeper = keeper;
  }

  /** Asked for by several at once, it is read once. */
  all(): Promise<ProofsAnswer> {
    this.reading ??= this.readAll().finally(() => {
      this.reading = undefined;
    });
    return this.reading;
  }

  private async readAll(): Promise<ProofsAnswer> {
    const builds: Build[] = [];
    const withProofs = new Set(await this.keeper.repository.documentsWith('proofs'));
    for (let offset = 0; ; offset += page) {
      const { documents, total } = await this.keeper.repository.list({
        kind: 'build',
        search: '',
        series: '',
        gone: false,
        limit: page,
        offset,
      });
      for (const { id, lastSeq, demo } of documents) {
        if (demo || !withProofs.has(id)) continue;
        const build = await this.of(id, lastSeq).catch(unlessDamaged);
        // A shop of thousands is read without keeping anybody waiting.
        await breathe();
        if (build) builds.push(build);
      }
      if (offset + page >= total) return { builds };
    }
  }

  private async of(id: string, lastSeq: number): Promise<Build | undefined> {
    const known = this.kept.get(id);
    if (known?.lastSeq === lastSeq) return known.build;
    const state = await this.keeper.state(id);
    const proofs = readProofs(state);
    const title = readSingle(state, 'about').text('title') ?? 'without a title';
    const build = proofs.length > 0 ? { id, title, proofs } : undefined;
    this.kept.set(id, { lastSeq, build });
    return build;
  }
}

/** A damaged build says so on the shelf; the proofs of the others do not wait for it. */
function unlessDamaged(error: unknown): undefined {
  if (!(error instanceof DamagedError)) throw error;
}
