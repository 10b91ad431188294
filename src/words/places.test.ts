import { describe, expect, it } from 'vitest';
import { readQuantity } from '../engine/units/read-quantity.ts';
import { flagInWords, slackInWords } from './places.ts';
import { dragTape, keptMark, keptTape } from './tape.ts';
import { shopWriter } from './writer.ts';

const mm = shopWriter({ system: 'mm' });

describe('marks on the tape', () => {
  it('are kept with a text that reads back to exactly their value', () => {
    for (const system of ['inch', 'mm'] as const) {
      for (const at of [0.11431, 0.5634, 1.9812, 2.00001]) {
        const mark = keptMark(at, system);
        const read = readQuantity(mark.text, { dimension: 'length', system });
        expect(read).toMatchObject({ ok: true, si: expect.closeTo(mark.si, 12) });
        expect(Math.abs(mark.si - at)).toBeLessThanOrEqual(keptTape(system).stepM / 2 + 1e-12);
      }
    }
  });
  it('that were dragged to a tick are kept where they were left', () => {
    for (const system of ['inch', 'mm'] as const) {
      const left = dragTape(system).snap(0.78123);
      expect(keptMark(left, system).si).toBeCloseTo(left, 12);
    }
  });
});

describe('the bench’s words', () => {
  it('never promise more slack than there is', () => {
    expect(slackInWords(0.0094, 0.0066, mm)).toBe('−9 … +6');
    expect(slackInWords(0.0094, 0.0066, shopWriter({ system: 'inch' }))).toBe('−1⁄4 … +1⁄4');
  });
  it('say on which side of the grip a flag hangs', () => {
    const flag = { fromTipM: 0, outM: 1.5, upM: -0.2, dropM: 1.1 };
    expect(flagInWords(flag, mm)).toBe(
      'tip: 1500 mm out from the grip’s front, 200 mm below it; 1100 mm below where it hangs without the weight',
    );
    expect(flagInWords({ ...flag, fromTipM: 0.5, upM: 0.2, dropM: undefined }, mm)).toBe(
      '500 mm from the tip: 1500 mm out from the grip’s front, 200 mm above it',
    );
  });
});
