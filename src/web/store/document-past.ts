import type { DocumentState, Operation } from '../../record/operation.ts';
import type { Standing } from '../../record/standing.ts';
import type { Api } from './api.ts';
import type { DocumentLog } from './document-log.ts';

/** Operations of one further look into the past. */
const earlierAtOnce = 2000;

/** What lies before the part of a history that was read when its document was opened; read when somebody asks. */
export class DocumentPast {
  private readonly api: Pick<Api, 'operationsAfter' | 'documentAfter'>;
  private readonly log: DocumentLog;
  private readonly changed: () => void;
  /** As the server answered them; undefined while it is asked. */
  private readonly states = new Map<number, DocumentState | undefined>();
  /** What of it the server cannot read as stored. */
  damage: string | undefined;

  constructor(api: DocumentPast['api'], log: DocumentLog, changed: () => void) {
    this.api = api;
    this.log = log;
    this.changed = changed;
  }

  /** What precedes `recent`. */
  get before(): Standing {
    return this.log.before;
  }

  /** The part that was read when the document was opened, and what came since. */
  get recent(): readonly Operation[] {
    return this.log.recent;
  }

  /** How many operations are not read yet. */
  get unread(): number {
    return this.log.start;
  }

  /** How many past states were fetched so far. */
  get fetched(): number {
    return [...this.states.values()].filter(Boolean).length;
  }

  /** Reads a further part, the one right before what was read. */
  async readEarlier(): Promise<void> {
    const { start, document } = this.log;
    const after = Math.max(0, start - earlierAtOnce);
    const { operations, damage } = await this.api.operationsAfter(document.id, after, start - after);
    this.damage ??= damage;
    this.log.prepend(operations, after);
    this.changed();
  }

  /** The document after so many operations; undefined while the server is asked, which a new snapshot ends. */
  stateAfter(upTo: number): DocumentState | undefined {
    const own = this.log.stateAfter(upTo);
    if (own || this.states.has(upTo)) return own ?? this.states.get(upTo);
    this.states.set(upTo, undefined);
    void this.ask(upTo);
    return undefined;
  }

  private async ask(upTo: number): Promise<void> {
    const { id, kind } = this.log.document;
    try {
      const { cells, clock } = await this.api.documentAfter(id, upTo);
      this.states.set(upTo, { id, kind, cells: new Map(cells), clock });
      this.changed();
    } catch {
      // Asked again by the next who wants it.
      this.states.delete(upTo);
    }
  }
}
