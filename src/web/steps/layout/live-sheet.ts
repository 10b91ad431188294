import {
  type GuideField,
  type Placed,
  placeOnTape,
  snapFree,
  stepGuide,
  type Tape,
} from '../../../engine/layout/guide-moves.ts';
import type { LiveAnswer, LiveLane } from '../../worker/live-lane.ts';
import type { LadderSheet } from '../../worker/messages.ts';
import { allBeside, type Beside, emptyFrame, type SheetFrame } from './sheet-frame.ts';

/** What stands in the record; each part the same object as long as it is unchanged. */
export interface SheetInput {
  /** Our marks and where each may go. */
  field: GuideField;
  ladder: LadderSheet;
  beside: Readonly<Record<Beside, AskedLayout | undefined>>;
  drawn: number;
}
export interface AskedLayout {
  fromTipM: readonly number[];
  ladder: LadderSheet;
}

/**
 * The Layout sheet between two writes to the record. Guides move here at once, the worker reads the newest
 * layout, and every drawing hears of it once per animation frame, outside of React. The record is written by
 * whoever ends the move.
 */
export class LiveSheet {
  frame: SheetFrame = emptyFrame;
  private input: SheetInput | undefined;
  private readonly painters = new Set<(frame: SheetFrame) => void>();
  private readonly lane: LiveLane;
  private readonly schedule: (paint: () => void) => void;
  private scheduled = false;

  constructor(lane: LiveLane, schedule: (paint: () => void) => void) {
    this.lane = lane;
    this.schedule = schedule;
    lane.listen('ours', {
      read: (answer) => this.show({ ours: answer, failure: undefined }),
      failed: (failure) => this.show({ failure }),
    });
    for (const name of allBeside) {
      const failed = () => this.showBeside(name, undefined);
      lane.listen(name, { read: (answer) => this.showBeside(name, answer), failed });
    }
  }

  /** Hears of every new frame; returns how to stop. */
  subscribe(painter: (frame: SheetFrame) => void): () => void {
    this.painters.add(painter);
    return () => this.painters.delete(painter);
  }

  /** Takes up what the record says now. While a guide is dragged its own place stays the hand's. */
  take(input: SheetInput): void {
    const before = this.input;
    this.input = input;
    const { field, ladder, drawn } = input;
    const held = this.frame.dragging && field.fromTipM.length === this.frame.fromTipM.length;
    const moved = !held && field.fromTipM !== before?.field.fromTipM;
    this.show({
      drawn: Math.min(drawn, Math.max(0, ladder.ladder.ladder.length - 1)),
      ...(moved ? { fromTipM: field.fromTipM, stop: undefined, dragging: false } : {}),
      ...(this.fits(input) ? {} : { ours: undefined }),
    });
    if (moved || ladder !== before?.ladder) this.lane.ask('ours', ladder, this.frame.fromTipM);
    for (const name of allBeside) this.askBeside(name, input.beside[name], before?.beside[name]);
  }

  activate(guide: number | undefined): void {
    if (guide !== this.frame.active) this.show({ active: guide, stop: undefined });
  }

  /** Moves a guide towards a place, as far as it may go. */
  drag(guide: number, wantedM: number, tape: Tape): void {
    this.place(guide, (field) => placeOnTape(field, guide, wantedM, tape), true);
  }

  /** Moves a guide by one step of a key; a second step against a ferrule goes over it, unless the key is only held. */
  step(guide: number, byM: number, tape: Tape, isHeld = false): number {
    const { stop, active } = this.frame;
    const again = !isHeld && active === guide && stop?.by === 'ferrule';
    this.place(guide, (field) => snapFree(field, guide, stepGuide(field, guide, byM, again), tape), false);
    return this.frame.fromTipM[guide];
  }

  /** Ends a drag and says where the guide was left. */
  drop(guide: number): number {
    const at = this.frame.fromTipM[guide];
    const others = this.input?.field.fromTipM ?? this.frame.fromTipM;
    this.show({ dragging: false, fromTipM: others.map((mark, i) => (i === guide ? at : mark)) });
    return at;
  }

  /** Takes the dragged guide back to where the record has it. */
  cancel(): void {
    if (!this.input) return;
    this.show({ dragging: false, fromTipM: this.input.field.fromTipM, stop: undefined });
    this.lane.ask('ours', this.input.ladder, this.frame.fromTipM);
  }

  close(): void {
    this.painters.clear();
    this.lane.close();
  }

  private place(guide: number, put: (field: GuideField) => Placed, dragging: boolean): void {
    const { input, frame } = this;
    if (!input) return;
    const placed = put({ ...input.field, fromTipM: frame.fromTipM });
    const fromTipM = frame.fromTipM.map((at, i) => (i === guide ? placed.fromTipM : at));
    this.show({ fromTipM, active: guide, dragging, stop: placed.stop });
    this.lane.ask('ours', input.ladder, fromTipM);
  }

  /** Whether the reading at hand has the loads and guides of the new input: it may then stand until the next. */
  private fits({ field, ladder }: SheetInput): boolean {
    const { ours } = this.frame;
    return (
      ours?.fromTipM.length === field.fromTipM.length &&
      ours.reading.loads.length === ladder.ladder.ladder.length
    );
  }

  private askBeside(name: Beside, asked: AskedLayout | undefined, before: AskedLayout | undefined): void {
    if (!asked) {
      if (this.frame.beside[name]) this.showBeside(name, undefined);
    } else if (asked.fromTipM !== before?.fromTipM || asked.ladder !== before.ladder) {
      this.lane.ask(name, asked.ladder, asked.fromTipM);
    }
  }

  private showBeside(name: Beside, answer: LiveAnswer | undefined): void {
    this.show({ beside: { ...this.frame.beside, [name]: answer } });
  }

  private show(change: Partial<SheetFrame>): void {
    this.frame = { ...this.frame, ...change };
    if (this.scheduled) return;
    this.scheduled = true;
    this.schedule(() => {
      this.scheduled = false;
      for (const paint of this.painters) paint(this.frame);
    });
  }
}
