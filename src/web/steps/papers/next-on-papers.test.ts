import { expect, test } from 'vitest';
import type { Row } from '../../../record/document.ts';
import { nextOnPapers } from './next-on-papers.ts';

const row = (id: string, fields: Row['fields']): Row => ({ id, fields });
const nothing = {
  title: undefined,
  isFinished: false,
  parts: [],
  acceptedAt: undefined,
  inspection: [],
  papersPrinted: false,
  deliveredAt: undefined,
};
const looked = (verdict?: string) => row('i', verdict ? { verdict } : {});

test('before the rod is finished it is about the quote, afterwards about inspection, quoted or not', () => {
  expect(nextOnPapers(nothing).at).toBe('quoteLines/new');
  expect(nextOnPapers({ ...nothing, parts: [row('a', { count: 1 })] }).at).toBe('quoteLines/a/unitPrice');
  expect(nextOnPapers({ ...nothing, acceptedAt: '2026-05-04' }).at).toBe('parts/new');
  expect(nextOnPapers({ ...nothing, isFinished: true }).at).toBe('inspection/new');
});

test('a rod is looked at, mended, named and handed over, in that order', () => {
  const at = (verdict?: string, title?: string, papersPrinted = false) =>
    nextOnPapers({ ...nothing, isFinished: true, inspection: [looked(verdict)], title, papersPrinted }).at;
  expect(at()).toBe('inspection/i/verdict');
  expect(at('not good', 'Four-weight')).toBe('inspection/i/verdict');
  expect(at('good')).toBe('about/-/title');
  expect(at('good', 'Four-weight')).toBe('delivery/-/deliveredTo');
  expect(at('good', 'Four-weight', true)).toBe('delivery/-/deliveredAt');
  expect(nextOnPapers({ ...nothing, deliveredAt: '2026-05-04' }).at).toBeUndefined();
});
