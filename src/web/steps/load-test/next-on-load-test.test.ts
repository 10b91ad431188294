import { expect, test } from 'vitest';
import type { Proof } from '../../../record/read-proofs.ts';
import { nextOnLoadTest } from './next-on-load-test.ts';

const predicted = [{ fromTipM: 0, outM: 2, upM: 0.5, reach: { outM: 0.05, upM: 0.1 } }];
const proof = (seen: Proof['seen'], more: Partial<Proof> = {}): Proof => ({
  id: 'p',
  madeAt: '2026-05-04T10:00:00Z',
  hungKg: 0.12,
  buttAngleRad: 0.8,
  guidesOn: true,
  setAside: undefined,
  rowIds: ['tip'],
  predicted,
  seen,
  ...more,
});
const next = (proofs: Proof[], isAccepted = false, isSided = true) =>
  nextOnLoadTest(proofs, { isAccepted, isSided }, (kg) => `${Math.round(kg * 1000)} g`);

test('the work goes from predicting to hanging, and on to the wraps where the tip hangs as predicted', () => {
  expect(next([]).at).toBe('proofs');
  expect(next([proof([{}])])).toEqual({
    words: 'Hang 120 g and enter where the tip hangs.',
    at: 'proofPlaces/tip/seenOut',
  });
  expect(next([proof([{ outM: 2.01, upM: 0.45 }])]).goOn).toBe('wraps');
  expect(next([], true).goOn).toBe('wraps');
});

test('before guides are taped on, the line side is asked for; what was hung meanwhile counts', () => {
  expect(next([], false, false).goOn).toBe('blank/spine');
  expect(next([proof([{}])], false, false).at).toBe('proofPlaces/tip/seenOut');
});

test('a tip that hangs elsewhere sends him back to measure; set aside, it is as if it had not been', () => {
  const missed = [{ outM: 2, upM: 0.1 }];
  expect(next([proof(missed)]).goOn).toBe('blank');
  expect(next([proof(missed, { setAside: 'the clamp slipped' })]).at).toBe('proofs');
});
