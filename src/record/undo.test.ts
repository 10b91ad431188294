import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { change } from '../../test/kit/arbitrary-record.ts';
import { applyOperations, emptyDocument, makeOperations, valueAt } from './document.ts';
import type { Change, Operation, Path } from './operation.ts';
import { historyOf, planRedo, planUndo, undoGesture } from './undo.ts';

/** A document with devices working on it, all seeing everything at once. */
class Bench {
  log: Operation[] = [];
  state = emptyDocument('b', 'build');
  private gestures = 0;

  write(device: string, changes: readonly Change[], gesture = `g.${++this.gestures}`): void {
    const made = makeOperations(this.state, changes, { device, gesture, at: '' });
    this.log.push(...made);
    this.state = applyOperations(this.state, made);
  }

  undo(device: string): Path[] {
    return this.carryOut(planUndo(this.log, device), device);
  }
  redo(device: string): Path[] {
    return this.carryOut(planRedo(this.log, device), device);
  }

  values(): Record<string, unknown> {
    const entries = [...this.state.cells].map(([key, cell]) => [key, cell.value]);
    return Object.fromEntries(entries.filter(([, value]) => value !== null));
  }

  private carryOut(plan: ReturnType<typeof planUndo>, device: string): Path[] {
    if (plan?.changes.length) this.write(device, plan.changes, undoGesture(plan, this.state.clock + 1));
    return plan?.held ?? [];
  }
}

const gestures = fc.array(fc.array(change, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 8 });

describe('one device alone', () => {
  test('undoing everything leaves nothing, redoing everything gives it all back', () => {
    fc.assert(
      fc.property(gestures, (all) => {
        const bench = new Bench();
        const stages = [bench.values()];
        for (const changes of all) {
          const before = bench.log.length;
          bench.write('d1-a', changes);
          if (bench.log.length > before) stages.push(bench.values());
        }
        for (const stage of stages.slice(0, -1).toReversed()) {
          bench.undo('d1-a');
          expect(bench.values()).toEqual(stage);
        }
        expect(planUndo(bench.log, 'd1-a')).toBeUndefined();
        for (const stage of stages.slice(1)) {
          bench.redo('d1-a');
          expect(bench.values()).toEqual(stage);
        }
        expect(planRedo(bench.log, 'd1-a')).toBeUndefined();
      }),
      { seed: 6, numRuns: 150 },
    );
  });

  test('undo and redo in any sequence end where a plain list of states would', () => {
    fc.assert(
      fc.property(gestures, fc.array(fc.boolean(), { maxLength: 30 }), (all, steps) => {
        const bench = new Bench();
        const stages = [bench.values()];
        for (const changes of all) {
          const before = bench.log.length;
          bench.write('d1-a', changes);
          if (bench.log.length > before) stages.push(bench.values());
        }
        let at = stages.length - 1;
        for (const back of steps) {
          // A reload between any two steps: another session of the same device.
          if (back) bench.undo('d1-b');
          else bench.redo('d1-c');
          at = Math.min(stages.length - 1, Math.max(0, at + (back ? -1 : 1)));
          expect(bench.values()).toEqual(stages[at]);
        }
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  test('a new gesture after an undo leaves nothing to redo', () => {
    const bench = new Bench();
    bench.write('d1-a', [{ path: ['about', '-', 'title'], value: 'a' }]);
    bench.undo('d1-a');
    expect(planRedo(bench.log, 'd1-a')).toBeDefined();
    bench.write('d1-a', [{ path: ['about', '-', 'note'], value: 'b' }]);
    expect(planRedo(bench.log, 'd1-a')).toBeUndefined();
  });
});

describe('with another device', () => {
  const title: Path = ['about', '-', 'title'];
  const note: Path = ['about', '-', 'note'];

  test('undo never alters a value the other device wrote last', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ own: fc.boolean(), changes: fc.array(change, { minLength: 1, maxLength: 3 }) }),
          {
            maxLength: 10,
          },
        ),
        fc.nat(8),
        (all, times) => {
          const bench = new Bench();
          for (const { own, changes } of all) bench.write(own ? 'd1-a' : 'd2-a', changes);
          const theirs = [...bench.state.cells].filter(([, cell]) => cell.device === 'd2-a');
          for (let time = 0; time < times; time++) bench.undo('d1-a');
          for (const [key, cell] of theirs) expect(bench.state.cells.get(key)).toEqual(cell);
        },
      ),
      { seed: 8, numRuns: 200 },
    );
  });

  test('what is held is named, the rest of the gesture is undone', () => {
    const bench = new Bench();
    bench.write('d1-a', [
      { path: title, value: 'mine' },
      { path: note, value: 'mine' },
    ]);
    bench.write('d2-a', [{ path: title, value: 'theirs' }]);
    expect(bench.undo('d1-a')).toEqual([title]);
    expect(valueAt(bench.state, title)).toBe('theirs');
    expect(valueAt(bench.state, note)).toBeNull();
  });

  test('their value under an own later one comes back, and is not undone further', () => {
    const bench = new Bench();
    bench.write('d1-a', [{ path: title, value: 'first' }]);
    bench.write('d2-a', [{ path: title, value: 'theirs' }]);
    bench.write('d1-a', [{ path: title, value: 'last' }]);
    bench.undo('d1-a');
    expect(valueAt(bench.state, title)).toBe('theirs');
    expect(bench.undo('d1-a')).toEqual([title]);
    expect(valueAt(bench.state, title)).toBe('theirs');
  });

  test('a gesture wholly held is passed over for the one before', () => {
    const bench = new Bench();
    bench.write('d1-a', [{ path: note, value: 'mine' }]);
    bench.write('d1-a', [{ path: title, value: 'mine' }]);
    bench.write('d2-a', [{ path: title, value: 'theirs' }]);
    expect(bench.undo('d1-a')).toEqual([title]);
    expect(bench.values()).toEqual({ 'about/-/title': 'theirs' });
  });
});

test('the history of a path has every value, winners and losers, the earliest first', () => {
  const bench = new Bench();
  const title: Path = ['about', '-', 'title'];
  for (const value of ['a', 'b', 'c']) bench.write('d1-a', [{ path: title, value }]);
  bench.undo('d1-a');
  expect(historyOf(bench.log.toReversed(), title).map((entry) => entry.value)).toEqual(['a', 'b', 'c', 'b']);
});
