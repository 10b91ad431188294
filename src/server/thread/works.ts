import type { WorkKind, WorkNote } from '../../record/record-api.ts';
import { NotFoundError } from '../errors.ts';
import { newId } from '../keeper.ts';
import { CalledOff, type TaskOptions } from './run-task.ts';

interface Work {
  note: WorkNote;
  ending: AbortController;
}

/** Long work on whole records, as it goes on: how far each is, and the way to call it off. */
export class Works {
  private readonly under = new Map<string, Work>();

  /** @param closing ends it as well @throws CalledOff, and what the work throws */
  async run<T>(
    kind: WorkKind,
    work: (task: Required<TaskOptions>) => Promise<T>,
    ...closing: AbortSignal[]
  ): Promise<T> {
    const note = { id: newId(), kind, done: 0, total: 0 };
    const ending = new AbortController();
    const signal = AbortSignal.any([ending.signal, ...closing]);
    const onProgress = (done: number, total: number) => void Object.assign(note, { done, total });
    this.under.set(note.id, { note, ending });
    try {
      return await work({ signal, onProgress });
    } catch (error) {
      // Ended in the middle, it may say whatever came of that.
      throw ending.signal.aborted ? new CalledOff() : error;
    } finally {
      this.under.delete(note.id);
    }
  }

  list(): WorkNote[] {
    return [...this.under.values()].map(({ note }) => ({ ...note }));
  }

  cancel(id: string): void {
    const work = this.under.get(id);
    if (!work) throw new NotFoundError('This work is done, or was called off');
    work.ending.abort();
  }
}
