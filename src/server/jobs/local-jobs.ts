import { StoredJobs } from './stored-jobs.ts';

/** Jobs of the one server of a SQLite file: one after the other, in a thread of this process. */
export class LocalJobs extends StoredJobs {
  private working: Promise<void> | undefined;

  /** Takes up what a server before left lying; what was under way when it was killed counts as tried once. */
  async takeUp(): Promise<void> {
    for (const id of await this.store.running()) await this.store.layDown(id, { counted: true });
    this.handOut();
  }

  async close(): Promise<void> {
    this.closing.abort();
    await this.working;
  }

  protected handOut(): void {
    if (this.closing.signal.aborted) return;
    this.working ??= this.workAll().finally(() => {
      this.working = undefined;
    });
  }

  private async workAll(): Promise<void> {
    try {
      while (!this.closing.signal.aborted) {
        const id = await this.store.oldestWaiting();
        if (id === undefined) return;
        await this.run(id, this.closing.signal);
      }
    } catch (error) {
      // A full or locked database; the next start of a job, or of the server, tries again.
      console.error(`Jobs stand still: ${(error as Error).message}`);
    }
  }
}
