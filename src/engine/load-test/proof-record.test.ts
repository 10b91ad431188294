import { expect, test } from 'vitest';
import { type BuildProofs, proofRecord } from './proof-record.ts';

const place = { fromTipM: 0, outM: 1, upM: 1, reach: { outM: 0.01, upM: 0.01 } };
const proof = (offs: readonly number[], setAside?: string): BuildProofs['proofs'][number] => ({
  hungKg: 0.2,
  madeAt: '2026-03-01T09:00:00Z',
  setAside,
  predicted: offs.map(() => place),
  seen: offs.map((off) => ({ outM: 1, upM: 1 + off })),
});
const build = (id: string, ...proofs: BuildProofs['proofs'][number][]): BuildProofs => ({
  id,
  title: id,
  proofs,
});

test('counts over all blanks, leaves out what was set aside and says where it was wrong', () => {
  const record = proofRecord([
    build('a', proof([0, 0.002, 0.004, 0.03])),
    build('b', proof([0, 0, 0, 0]), proof([0.5, 0.5, 0.5, 0.5], 'the clamp slipped')),
    build('c'),
  ]);
  expect(record).toMatchObject({ blanks: 2, weights: 2, counted: 8, agreed: 7, setAside: 1 });
  expect(record.wrong).toMatchObject([{ build: 'a', agreed: 3, counted: 4 }]);
});

test('the chance is the binomial law’s (0.95 of 20: all agree in 0.358, at most 16 in 0.0159)', () => {
  // Binomial tables, n = 20, p = 0.05: P(0) = 0.3585, P(at least 4) = 0.0159
  const of = (misses: number) =>
    proofRecord([build('a', proof(Array.from({ length: 20 }, (_, i) => (i < misses ? 1 : 0))))]).chance;
  expect(1 - of(1)).toBeCloseTo(0.3585, 4);
  expect(of(4)).toBeCloseTo(0.0159, 4);
  expect(of(0)).toBeCloseTo(1, 9);
});

test('a ± twice too small asks to be twice as wide', () => {
  const allowed = Math.hypot(0.01, 0.005);
  const offs = Array.from({ length: 40 }, (_, i) => (2 * allowed * i) / 37);
  expect(proofRecord([build('a', proof(offs))]).widen).toBeCloseTo(2, 6);
});

test('nothing seen yet claims nothing', () => {
  expect(proofRecord([])).toMatchObject({ counted: 0, chance: 1, widen: 1, wrong: [] });
});
