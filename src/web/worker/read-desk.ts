import { makeLadder, readLadder } from '../../engine/layout/ladder.ts';
import type { Ladder } from '../../engine/layout/ladder-request.ts';
import { type LadderState, makeLadderState } from '../../engine/layout/ladder-state.ts';
import { type RuledReading, ruleLadder } from '../../engine/layout/rule-reading.ts';
import type { LadderSheet, ReadTask } from './messages.ts';

interface KeptThread {
  sheet: LadderSheet;
  ladder: Ladder;
  state: LadderState;
}

/** Reads layouts, keeping each thread's ladder and bends from one reading to the next. */
export class ReadDesk {
  private readonly threads = new Map<string, KeptThread>();

  /** Throws where the stations do not fit the thread's rod, or the thread is unknown and brings no sheet. */
  read({ thread, sheet, fromTipM }: ReadTask): RuledReading {
    if (sheet)
      this.threads.set(thread, { sheet, ladder: makeLadder(sheet.ladder), state: makeLadderState() });
    const kept = this.threads.get(thread);
    if (!kept) throw new Error(`no ladder for thread ${thread}`);
    const reading = readLadder(kept.ladder, fromTipM, kept.state);
    return ruleLadder(kept.ladder, fromTipM, reading, kept.sheet.diameters);
  }
}
