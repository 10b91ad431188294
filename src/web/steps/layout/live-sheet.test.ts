import { describe, expect, it } from 'vitest';
import type { Tape } from '../../../engine/layout/guide-moves.ts';
import { LiveLane } from '../../worker/live-lane.ts';
import type { WorkerLike } from '../../worker/long-lane.ts';
import type { LadderSheet, ReadTask, ToWorker } from '../../worker/messages.ts';
import { LiveSheet, type SheetInput } from './live-sheet.ts';
import type { SheetFrame } from './sheet-frame.ts';

const tape: Tape = { stepM: 0.001, snap: (at) => Math.round(at * 1000) / 1000 };

function setUp() {
  const posted: ToWorker[] = [];
  const worker: WorkerLike = {
    postMessage: (message) => posted.push(message),
    terminate: () => undefined,
    onmessage: null,
    onerror: null,
  };
  const paints: (() => void)[] = [];
  const sheet = new LiveSheet(new LiveLane(() => worker), (paint) => paints.push(paint));
  const answer = () => {
    const { id, task } = posted.at(-1)!;
    const reading = { fromTipM: (task as ReadTask).fromTipM, loads: [0] };
    worker.onmessage?.({ data: { id, says: 'done', answer: reading as never } } as MessageEvent);
  };
  const answerAll = () => {
    for (let answered = 0; answered < posted.length; answered++) answer();
  };
  return { sheet, posted, paints, answer, answerAll };
}
const ladder = { ladder: { ladder: [{}] }, diameters: [] } as unknown as LadderSheet;
const input = (fromTipM: readonly number[], change: Partial<SheetInput> = {}): SheetInput => ({
  field: {
    fromTipM,
    footM: fromTipM.map(() => 0.02),
    keepOut: [{ fromTipM: 0.4, toTipM: 0.45 }],
    pinned: fromTipM.map(() => false),
    room: { fromTipM: 0.02, toTipM: 1 },
    leastIntervalM: 0.05,
  },
  ladder,
  beside: { start: undefined, best: undefined, otherRule: undefined, rest: undefined },
  drawn: 0,
  ...change,
});

describe('the sheet while a guide moves', () => {
  it('moves the guide at once and asks for its reading', () => {
    const { sheet, posted, answerAll } = setUp();
    sheet.take(input([0.1, 0.3]));
    answerAll();
    sheet.drag(1, 0.35042, tape);
    expect(sheet.frame.fromTipM).toEqual([0.1, 0.35]);
    expect((posted.at(-1)!.task as ReadTask).fromTipM).toEqual([0.1, 0.35]);
  });
  it('paints once per frame, with the newest state', () => {
    const { sheet, paints } = setUp();
    const seen: SheetFrame[] = [];
    sheet.subscribe((frame) => seen.push(frame));
    sheet.take(input([0.1, 0.3]));
    for (const at of [0.31, 0.32, 0.33]) sheet.drag(1, at, tape);
    expect(paints).toHaveLength(1);
    paints[0]();
    expect(seen.map((frame) => frame.fromTipM[1])).toEqual([0.33]);
  });
  it('leaves the dragged guide in the hand when the record changes elsewhere', () => {
    const { sheet } = setUp();
    sheet.take(input([0.1, 0.3]));
    sheet.drag(1, 0.33, tape);
    sheet.take(input([0.12, 0.3]));
    expect(sheet.frame.fromTipM).toEqual([0.1, 0.33]);
    sheet.drop(1);
    sheet.take(input([0.12, 0.33]));
    expect(sheet.frame.fromTipM).toEqual([0.12, 0.33]);
  });
  it('reads the layouts beside ours when they change, and forgets one that is gone', () => {
    const { sheet, posted, answerAll } = setUp();
    const none = { best: undefined, otherRule: undefined, rest: undefined };
    const start = { fromTipM: [0.1, 0.35], ladder };
    sheet.take(input([0.1, 0.3], { beside: { ...none, start } }));
    answerAll();
    expect(sheet.frame.beside.start?.fromTipM).toEqual([0.1, 0.35]);
    const asked = posted.length;
    sheet.take(input([0.1, 0.3], { beside: { ...none, start } }));
    answerAll();
    expect(posted.length).toBeLessThanOrEqual(asked + 1);
    sheet.take(input([0.1, 0.3], { beside: { ...none, start: undefined } }));
    expect(sheet.frame.beside.start).toBeUndefined();
  });
  it('cancelling takes the guide back to the record', () => {
    const { sheet } = setUp();
    sheet.take(input([0.1, 0.3]));
    sheet.drag(1, 0.33, tape);
    sheet.cancel();
    expect(sheet.frame).toMatchObject({ fromTipM: [0.1, 0.3], dragging: false });
  });
  it('stops a key at a ferrule, says so, and goes over it at the second press', () => {
    const { sheet } = setUp();
    sheet.take(input([0.1, 0.39]));
    sheet.step(1, 0.001, tape);
    expect(sheet.frame).toMatchObject({ fromTipM: [0.1, 0.39], stop: { by: 'ferrule' } });
    sheet.step(1, 0.001, tape);
    expect(sheet.frame.fromTipM[1]).toBeCloseTo(0.46, 9);
    expect(sheet.frame.stop).toBeUndefined();
  });
  it('stays at a ferrule while a key is held', () => {
    const { sheet } = setUp();
    sheet.take(input([0.1, 0.389]));
    sheet.step(1, 0.001, tape);
    for (let repeat = 0; repeat < 20; repeat++) sheet.step(1, 0.001, tape, true);
    expect(sheet.frame).toMatchObject({ fromTipM: [0.1, 0.39], stop: { by: 'ferrule' } });
  });
  it('leaves a stopped guide on a tick of the tape on the free side', () => {
    const { sheet } = setUp();
    const sixteenth = 0.0254 / 16;
    const inches: Tape = { stepM: sixteenth, snap: (at) => Math.round(at / sixteenth) * sixteenth };
    sheet.take(input([0.1, 0.3]));
    sheet.drag(1, 0.41, inches);
    const at = sheet.frame.fromTipM[1];
    expect(at).toBeLessThanOrEqual(0.39 + 1e-9);
    expect(at).toBeGreaterThan(0.39 - sixteenth);
    expect(at / sixteenth).toBeCloseTo(Math.round(at / sixteenth), 9);
  });
});
