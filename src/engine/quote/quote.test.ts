import fc from 'fast-check';
import { expect, test } from 'vitest';
import { writeMoney } from '../../words/intl.ts';
import { writeCsv } from './csv.ts';
import { plainMoney, readMoney, roundMoney } from './money.ts';
import { orderList } from './order-list.ts';
import { makeQuote } from './quote.ts';

const eur = { code: 'EUR', digits: 2 };
const yen = { code: 'JPY', digits: 0 };
const dinar = { code: 'KWD', digits: 3 };

test('a quote by hand: every line rounded once, the sum the sum of what is printed', () => {
  const quote = makeQuote({
    lines: [
      { what: 'Blank', count: 1, unitPrice: 21_050, spare: 0 },
      { what: 'Snake 3', count: 4, unitPrice: 133, spare: 1 },
    ],
    hours: [{ stage: 'Wraps', hours: 3.25 }],
    hourlyRate: 3333,
    overheadPercent: 12.5,
    reservePercent: 5,
    depositPercent: 40,
    taxPercent: 24,
  });
  // 21050 + 532 = 21582; 3.25 × 3333 = 10832.25; 12.5 % = 1354; 5 % of 33768 = 1688.4; 24 % of 35456 = 8509.44.
  expect(quote).toMatchObject({
    parts: 21_582,
    labour: 10_832,
    overheads: 1354,
    reserve: 1688,
    beforeTax: 35_456,
    tax: 8509,
    total: 43_965,
    deposit: 21_582,
  });
});

test('a deposit covers the parts, and never more than the whole', () => {
  const input = { lines: [], hours: [], hourlyRate: 0, overheadPercent: 0, reservePercent: 0, taxPercent: 0 };
  expect(makeQuote({ ...input, depositPercent: 50 }).deposit).toBe(0);
  const line = { what: 'x', count: 1, unitPrice: 1000, spare: 0 };
  expect(makeQuote({ ...input, lines: [line], depositPercent: 10 }).deposit).toBe(1000);
  expect(makeQuote({ ...input, lines: [line], depositPercent: 0 }).deposit).toBe(0);
});

test('money is written with its currency’s own places', () => {
  expect(writeMoney(123_456, eur)).toBe('EUR\u00a01,234.56');
  expect(writeMoney(1200, yen)).toBe('JPY\u00a01,200');
  expect(plainMoney(5, dinar)).toBe('0.005');
  expect(plainMoney(-5, eur)).toBe('-0.05');
  expect(roundMoney(2.5)).toBe(3);
  expect(roundMoney(1.005 * 100)).toBe(101);
});

test.each([
  ['12', 1200],
  ['12.5', 1250],
  ['12,50', 1250],
  ['1,234.50', 123_450],
  ['1.234,50', 123_450],
  ['1 234', 123_400],
  ['1,234', 123_400],
  ['EUR 7.05', 705],
  ['.5', 50],
  ['12.345', 1_234_500],
  ['twelve', undefined],
  ['1.2.3', undefined],
  ['-5', undefined],
  ['', undefined],
])('money typed as "%s" is %s smallest units', (text, amount) => {
  expect(readMoney(text, eur)).toBe(amount);
});

test('what is written is read back the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e11 }), fc.constantFrom(eur, yen, dinar), (amount, currency) => {
      expect(readMoney(writeMoney(amount, currency), currency)).toBe(amount);
    }),
    { seed: 4, numRuns: 200 },
  );
});

test('spares: tip-tops half a size either way, one or two guides a size', () => {
  const list = orderList({
    blank: 'Blank',
    guides: [
      ...Array(5).fill({ kind: 'snake', size: '2' }),
      { kind: 'snake', size: '3' },
      { kind: 'stripping', size: '12' },
    ],
    tipOutsideM: 0.00152,
    threads: [{ name: 'green', metres: 31.2, spools: 1 }],
  });
  // 1.52 mm is 3.83/64 in: tube 4, neighbours 3.5 and 4.5.
  expect(list.filter(({ part }) => part === 'tip-top')).toEqual([
    { part: 'tip-top', size64: 4, count: 1, spare: 0 },
    { part: 'tip-top', size64: 3.5, half: 'below', count: 0, spare: 1 },
    { part: 'tip-top', size64: 4.5, half: 'above', count: 0, spare: 1 },
  ]);
  expect(list.filter(({ part }) => part === 'guide')).toEqual([
    { part: 'guide', kind: 'snake', size: '2', count: 5, spare: 2 },
    { part: 'guide', kind: 'snake', size: '3', count: 1, spare: 1 },
    { part: 'guide', kind: 'stripping', size: '12', count: 1, spare: 0 },
  ]);
});

test('a table as RFC 4180 has it', () => {
  // The RFC's own example in section 2, point 7, and its line ends.
  expect(writeCsv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  expect(writeCsv([['a,b', 'c\r\nd', 3.5]])).toBe('"a,b","c\r\nd",3.5\r\n');
});

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '  =cmd()', '\r=1', ';=1+1', 'thread;=1+1'])(
  '%j can be no formula',
  (text) => {
    expect(writeCsv([[text]])).toMatch(/^"?'/);
  },
);

test('any table comes back from a reader of RFC 4180', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }),
      (rows) => {
        // The apostrophe in front of what a spreadsheet would take for a formula is not the table's.
        const bare = (field: string) => field.replace(/^'(?=(.*[;\t])?\s*[=+\-@\t\r])/s, '');
        const read = readCsv(writeCsv(rows));
        expect(read.map((row) => row.map(bare))).toEqual(rows.map((row) => row.map(bare)));
      },
    ),
    { seed: 9, numRuns: 200 },
  );
});

/** The grammar of RFC 4180, section 2, read character by character. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let [row, field, quoted, at]: [string[], string, boolean, number] = [[], '', false, 0];
  while (at < text.length) {
    const c = text[at];
    if (quoted && c === '"' && text[at + 1] === '"') {
      field += '"';
      at++;
    } else if (c === '"') quoted = !quoted;
    else if (!quoted && c === ',') {
      row.push(field);
      field = '';
    } else if (!quoted && c === '\r' && text[at + 1] === '\n') {
      row.push(field);
      rows.push(row);
      [row, field] = [[], ''];
      at++;
    } else field += c;
    at++;
  }
  return rows;
}
