import { describe, expect, it } from 'vitest';
import { planProtocol } from '../../../engine/bench/protocol.ts';
import { applyOperations, emptyDocument, makeOperations, rows } from '../../../record/document.ts';
import { validateValue } from '../../../record/validate.ts';
import { onTape, planRows } from './plan-rows.ts';
import { protocolOfRows, setupOfRows } from './protocol-of-rows.ts';
import { countReadings, setupRowsOf } from './reading-rows.ts';

const plan = planProtocol({
  kind: 'twenty-minute',
  blankLengthM: 2.743,
  tipDropM: ({ clampFromTipM, massKg }) => (clampFromTipM * massKg) / (massKg + 0.2),
});
let made = 0;
const changes = planRows(plan, {
  system: 'inch',
  edge: 'upper',
  clampHeight: onTape(1.1, 'inch'),
  firstOrder: 0,
  newRowId: () => `row${++made}`,
});
const document = applyOperations(
  emptyDocument('b', 'build'),
  makeOperations(emptyDocument('b', 'build'), changes, {
    device: 'd-s',
    gesture: 'g',
    at: '2026-01-01T00:00:00Z',
  }),
);
const setups = setupRowsOf((collection) => rows(document, collection));
const stiff = {
  stiffness: [{ fromTipM: 0, EINm2: 5 }],
  massPerLength: [{ fromTipM: 0, kgPerM: 0.01 }],
};

describe('a protocol laid out as rows', () => {
  it('every value may stand where it is written', () => {
    expect(changes.flatMap(({ path, value }) => validateValue('build', path, value))).toEqual([]);
  });
  it('the rows hold the protocol: set-ups, weights in order, every reading still to be taken', () => {
    expect(setups).toHaveLength(plan.setups.length);
    expect(countReadings(setups)).toEqual({ read: 0, planned: plan.readingCount });
    const again = protocolOfRows(setups, stiff, plan.thirdLoadKg);
    expect(again.setups.map(({ loads }) => loads.map(({ massKg }) => massKg))).toEqual(
      plan.setups.map(({ loads }) => loads.map(({ massKg }) => massKg)),
    );
    expect(again.setups.map(({ loads }) => loads.map(({ repeat }) => repeat))).toEqual(
      plan.setups.map(({ loads }) => loads.map(({ repeat }) => repeat)),
    );
    expect(again.readingCount).toBe(plan.readingCount);
  });
  it('stations lie within a quarter inch of the plan, where a tape finds them', () => {
    setups.forEach((rowsOfSetup, index) => {
      const { clampFromTipM, flagsFromTipM } = setupOfRows(rowsOfSetup, stiff) ?? plan.setups[0];
      expect(Math.abs(clampFromTipM - plan.setups[index].clampFromTipM)).toBeLessThan(0.0064);
      expect(flagsFromTipM).toHaveLength(plan.setups[index].flagsFromTipM.length);
    });
  });
  it.each([
    [0.305, 'inch', '12 in', 0.3048],
    [1.372, 'inch', '54 in', 1.3716],
    [0.686, 'mm', '685 mm', 0.685],
    [0, 'mm', '0 mm', 0],
  ] as const)('%f m in a shop of %s is %s', (lengthM, system, text, si) => {
    const place = onTape(lengthM, system);
    expect(place.text).toBe(text);
    expect(place.si).toBeCloseTo(si, 12);
  });
});
