import { expect, test } from 'vitest';
import type { ClampSetup } from '../bench/bench.ts';
import { fourPiece } from '../bench/test-bench.ts';
import { benchDays, firstDay } from './bench-days.ts';

test('set-ups without a day are the first one’s; a day with nothing read is none', () => {
  const bench = fourPiece();
  const first: ClampSetup = {
    kind: 'clamp',
    id: 's',
    name: 'level',
    nominalAngleRad: 0,
    clampFromTipM: 2,
    turnedRad: 0,
    edge: 'axis',
    sigmaM: 0.002,
    tiltSigmaRad: 0.02,
    tests: [{ id: 't', hungKg: 0.1, hungFromTipM: 0, readings: [{ id: 'r', fromTipM: 0, dropM: 0.3 }] }],
  };
  const second = { ...first, id: 'again', day: 'Tuesday' };
  const empty = { ...first, id: 'empty', day: 'Friday', tests: [] };
  const days = benchDays({ ...bench, setups: [first, second, empty] });
  expect(days.map(({ name }) => name)).toEqual([firstDay, 'Tuesday']);
  expect(days[1].bench.setups.map(({ id }) => id)).toEqual(['again']);
  expect(days[0].readings).toBe(days[1].readings);
});

test('a photograph counts on the day it was taken', () => {
  const curve = { id: 'c', day: '2026-03-01', hungKg: 0.1, points: [] };
  const days = benchDays({ ...fourPiece(), setups: [], curves: [curve] });
  expect(days).toMatchObject([{ name: '2026-03-01', readings: 1 }]);
});
