import { expect, test } from 'vitest';
import { commonTimes } from '../finish/schedule.ts';
import { bendGate, commonGlueCureS, type SoftWork } from './bend-gate.ts';

const hour = 3_600_000;
const work = (change: Partial<SoftWork> = {}): SoftWork => ({
  glueCureS: commonGlueCureS,
  coats: [],
  times: commonTimes,
  ...change,
});

test('nothing glued and nothing brushed on may be bent', () => {
  expect(bendGate(work(), 0)).toBeUndefined();
});

test('glue is waited for until its cure, to the second', () => {
  const glued = work({ handleGluedAtMs: 5 * hour });
  expect(bendGate(glued, 29 * hour - 1)).toEqual({ soft: 'handle', untilMs: 29 * hour });
  expect(bendGate(glued, 29 * hour)).toBeUndefined();
  expect(bendGate({ ...glued, glueCureS: 6 * 3600 }, 12 * hour)).toBeUndefined();
});

test('of several soft things the last to harden is named; a cold room doubles a coat’s wait', () => {
  const coats = [
    { brushedAtMs: 0, roomC: 23 },
    { brushedAtMs: 20 * hour, roomC: 23 },
  ];
  const both = work({ handleGluedAtMs: 10 * hour, tipTopGluedAtMs: 15 * hour, coats });
  expect(bendGate(both, 21 * hour)).toEqual({ soft: 2, untilMs: 44 * hour });
  expect(bendGate({ ...both, coats: [] }, 21 * hour)?.soft).toBe('tip-top');
  const cold = work({ coats: [{ brushedAtMs: 0, roomC: 13 }] });
  expect(bendGate(cold, 47 * hour)?.untilMs).toBe(48 * hour);
});
