import { expect, test } from 'vitest';
import { boxesOverlap, textBox } from '../../test/support/text-boxes.ts';
import { inspectionPoints } from '../engine/delivery/inspection.ts';
import { makeQuote } from '../engine/quote/quote.ts';
import { cautions } from '../words/care.ts';
import { inspectionInWords } from '../words/inspection.ts';
import { shopWriter } from '../words/writer.ts';
import { deliverySheets } from './delivery-sheets.ts';
import { type Mark, plainText, type Sheet, type Text } from './drawing.ts';
import { orderCsv } from './order-csv.ts';
import { orderSheet } from './order-sheet.ts';
import { marginMm } from './paper-size.ts';
import { linesOf } from './paragraph.ts';
import { quoteSheet } from './quote-sheet.ts';
import { textWidthMm } from './text-width.ts';
import { ticketLabel } from './ticket-label.ts';

const texts = (marks: readonly Mark[]) => marks.filter((mark): mark is Text => mark.kind === 'text');
const words = ({ pages }: Sheet) =>
  pages.flatMap(({ marks }) => texts(marks).map(({ pieces }) => plainText(pieces)));

/** No text runs over another, or off the page. */
function expectTidy({ pages }: Sheet): void {
  for (const { widthMm, heightMm, marks } of pages) {
    const boxes = texts(marks)
      .filter(({ pieces }) => plainText(pieces).trim() !== '')
      .map((mark) => ({ mark, box: textBox(mark) }));
    for (const { box, mark } of boxes) {
      expect(box.leftMm, plainText(mark.pieces)).toBeGreaterThan(marginMm - 1);
      expect(box.rightMm, plainText(mark.pieces)).toBeLessThan(widthMm - marginMm + 3);
      expect(box.bottomMm, plainText(mark.pieces)).toBeLessThan(heightMm - 5);
    }
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1))
        expect(boxesOverlap(a.box, b.box), `${plainText(a.mark.pieces)} / ${plainText(b.mark.pieces)}`).toBe(
          false,
        );
    });
  }
}

function quoteOf(count: number, hourlyRate = 4500) {
  const quote = makeQuote({
    lines: Array.from({ length: count }, (_, i) => ({
      what: `Part ${i + 1} of an invented rod`,
      count: 2,
      unitPrice: 123_45,
      spare: 0,
    })),
    hours: [{ stage: 'Wraps', hours: 3.5 }],
    hourlyRate,
    overheadPercent: 10,
    reservePercent: 5,
    depositPercent: 40,
    taxPercent: 24,
  });
  return quoteSheet(
    {
      shop: 'An invented shop',
      address: 'Some lane 1\n00000 Nowhere',
      title: 'Nine-footer',
      customer: 'An invented angler',
      wish: 'A rod for small rivers, '.repeat(30),
      quote,
      currency: { code: 'EUR', digits: 2 },
      taxPercent: 24,
      date: '1 March 2026',
      validUntil: '31 March 2026',
      delivery: 'in about 6 weeks',
      terms: 'Parts are ordered when the deposit has come in. '.repeat(8),
    },
    { paper: 'a4' },
  );
}

test.each([1, 12, 30, 200])('a quote of %i lines is one page, and names the sum', (count) => {
  const sheet = quoteOf(count);
  expect(sheet.pages).toHaveLength(1);
  expectTidy(sheet);
  expect(words(sheet).some((line) => line === 'To pay')).toBe(true);
  if (count === 200)
    expect(words(sheet).some((line) => /further lines, in the sums below/.test(line))).toBe(true);
});

test('a customer’s quote says parts, work, tax and sum: no hours, rate, overheads or reserve', () => {
  const said = words(quoteOf(2)).join('\n').replaceAll('\u00a0', ' ');
  expect(said).not.toMatch(/\d h\b|overhead|reserve|Wraps/i);
  // 2 × 2 × 123.45 of parts; 3.5 h at 45.00, 10 % on it, 5 % on all: worked by hand.
  expect(said).toContain('EUR 493.80');
  expect(said).toContain('EUR 206.60');
});

test('work without a rate is not in the sum, and is no gift of 0', () => {
  const said = words(quoteOf(1, 0)).join('\n');
  expect(said).toContain('not in this sum');
  expect(said).not.toMatch(/EUR.0\.00/);
});

test.each(['a4', 'letter'] as const)(
  'delivery papers on %s: label, every caution with its source, tolerances, signatures',
  (paper) => {
    const rod = {
      title: 'Nine-footer',
      customer: 'An invented angler',
      shop: 'An invented shop',
      facts: '9 ft, 4 sections, line 5',
      revision: 'ab12cd34ef',
      date: '1 March 2026',
    };
    const facts = { lengthM: 2.743, massKg: 0.092 };
    const list = inspectionPoints.map((point) => ({
      ...inspectionInWords(point, facts, shopWriter({ system: 'mm' }))!,
      found: '',
      verdict: '',
    }));
    const sheets = deliverySheets(rod, list, [{ what: 'Thread green', lot: 'L7', dye: 'D3' }], paper);
    for (const sheet of sheets) {
      expect(sheet.pages).toHaveLength(1);
      expectTidy(sheet);
    }
    const [, care, inspection] = sheets.map((sheet) => words(sheet).join(' '));
    for (const title of ['Power lines', 'Lightning', 'High-sticking', 'Joints'])
      expect(care).toContain(title);
    for (const { title } of cautions) expect(care.split(title).length, title).toBeGreaterThan(2);
    expect(care.match(/common practice, no source/g)).toHaveLength(1);
    expect(care.match(/30-30 rule/g)).toHaveLength(1);
    expect(care).toContain('30 m');
    expect(inspection).toContain('2743 mm ± 5 mm');
    expect(inspection).toContain('Received by, date');
    expect(inspection).toContain('D3');
  },
);

test('an order list of any length runs on to further pages', () => {
  const row = {
    what: 'Snake guide 3',
    count: 4,
    spare: 2,
    source: 'a supplier',
    each: 'EUR 1.20',
    amount: 'EUR 7.20',
  };
  const sheet = orderSheet(Array(50).fill(row), { paper: 'a4', stamp: 'Nine-footer' });
  expect(sheet.pages).toHaveLength(2);
  expectTidy(sheet);
});

test('a label holds whatever the customer is called', () => {
  const sheet = ticketLabel(
    {
      number: 'k3p9x2',
      rod: 'W'.repeat(200),
      customer: 'שלום 🎣'.repeat(20),
      contact: '',
      broken: 'the tip broke off',
      promised: '1 Dec 2026',
      price: 'EUR 45.50',
      shop: 'An invented shop with a very long name indeed, and more',
    },
    'letter',
  );
  expectTidy(sheet);
});

test('lines are broken at spaces, and inside a word only where it is longer than the line', () => {
  const lines = linesOf('a short line\nand averyveryveryverylongword that goes on', 30, 3);
  for (const line of lines) expect(textWidthMm([line], 3)).toBeLessThanOrEqual(30);
  expect(lines[0]).toBe('a short line');
  expect(lines.join('').replace(/ /g, '')).toBe('ashortlineandaveryveryveryverylongwordthatgoeson');
});

test('the order for a spreadsheet leaves an unknown price empty, names its encoding, and runs no formula', () => {
  const lines = [
    { what: 'snake guide', count: 3, spare: 1, source: '=1+1', unitPrice: 250 },
    { what: 'thread; =1+1', count: 1, spare: 0, unitPrice: 0 },
  ];
  expect(orderCsv(lines, { code: 'EUR', digits: 2 })).toBe(
    '\uFEFFwhat,for it,spare,from,each,amount with spares,currency\r\n' +
      "snake guide,3,1,'=1+1,2.5,10,EUR\r\n" +
      '"\'thread; =1+1",1,0,,,,EUR\r\n',
  );
});
