import { expect, test } from 'vitest';
import { howRead } from './how-read.ts';
import type { FitClampSetup, FitRequest, FitSpanSetup } from './request.ts';

const blank = { lengthM: 2.7 };
const clamp = (clampFromTipM?: number, drops = 1): FitClampSetup => ({
  nominalAngleRad: 0,
  clampFromTipM,
  tests: [{ readings: Array.from({ length: drops }, () => ({ fromTipM: 0, dropM: 0.3 })) }],
});
const span: FitSpanSetup = {
  kind: 'span',
  supportsFromTipM: [0.4, 0.9],
  loadFromTipM: 0.65,
  tests: [{ massKg: 0.1, sagM: 0.01 }],
};
const swings = [{ hz: 2.7, sigmaHz: 0.02 }];

test.each<[string, Pick<FitRequest, 'setups'> & { swings?: typeof swings }, string]>([
  ['nothing', { setups: [] }, 'nothing'],
  ['a set-up without a drop', { setups: [clamp(2.55, 0)] }, 'nothing'],
  ['swings alone', { setups: [], swings }, 'one-hold'],
  ['one clamp', { setups: [clamp()] }, 'one-hold'],
  ['clamped again beside the first place', { setups: [clamp(2.55), clamp(2.4)], swings }, 'one-hold'],
  ['a second place without a drop', { setups: [clamp(2.55), clamp(1.3, 0)] }, 'one-hold'],
  ['the clamp moved up the blank', { setups: [clamp(2.55), clamp(1.3)] }, 'more'],
  ['a stretch on two supports', { setups: [span] }, 'more'],
])('%s', (_, { setups, swings: counted }, read) => {
  expect(howRead({ blank: { ...blank, swings: counted }, setups })).toBe(read);
});
