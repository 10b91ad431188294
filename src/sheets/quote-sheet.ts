import type { Currency } from '../engine/quote/money.ts';
import type { Quote } from '../engine/quote/quote.ts';
import { writeMoney } from '../words/intl.ts';
import { line, type Mark, type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { linesOf, paragraph } from './paragraph.ts';
import { drawTable, tableHeightMm } from './table.ts';

export interface QuotePaper {
  shop: string;
  address: string;
  title: string;
  customer: string;
  /** What the customer wants, in the builder's words. */
  wish: string;
  quote: Quote;
  currency: Currency;
  taxPercent: number;
  /** Ready to read; empty for none. */
  date: string;
  validUntil: string;
  delivery: string;
  terms: string;
}

/** Everything on one page: a customer signs one page. */
export function quoteSheet(paper: QuotePaper, { paper: name }: { paper: PaperName }): Sheet {
  const size = standingPaper[name];
  const widthMm = size.widthMm - 2 * marginMm;
  const right = size.widthMm - marginMm;
  const money = (amount: number) => writeMoney(amount, paper.currency);
  const wish = paragraph(paper.wish, marginMm, marginMm + 34, { widthMm, most: 6 });
  const tableTop = marginMm + 36 + wish.heightMm;
  const sums = sumsOf(paper, money);
  const terms = linesOf(paper.terms, widthMm, 2.6).slice(0, 5);
  const footMm = size.heightMm - marginMm - 30 - terms.length * 3.8;
  const rows = fitRows(
    partRows(paper.quote, money),
    Math.floor((footMm - tableTop - sums.length * 5.2 - 12) / leastRowMm),
  );
  const rowMm = Math.min(6, (footMm - tableTop - sums.length * 5.2 - 8) / (rows.length + 1));
  const sumTop = tableTop + tableHeightMm({ rows, rowMm }) + 3;
  const marks: Mark[] = [
    text(marginMm, marginMm + 5, paper.shop, { sizeMm: 5, bold: true }),
    ...paper.address
      .split('\n')
      .slice(0, 4)
      .map((words, i) => text(right, marginMm + 3 + i * 3.6, words, { sizeMm: 2.7, align: 'end' })),
    text(marginMm, marginMm + 17, `Quote: ${paper.title}`, { sizeMm: 5.5, bold: true }),
    text(
      marginMm,
      marginMm + 24,
      [paper.customer && `for ${paper.customer}`, paper.date].filter(Boolean).join(' · '),
    ),
    text(
      marginMm,
      marginMm + 29,
      [paper.validUntil && `valid until ${paper.validUntil}`, paper.delivery && `delivery ${paper.delivery}`]
        .filter(Boolean)
        .join(' · '),
    ),
    ...wish.marks,
    ...drawTable({ columns: columnsOf(widthMm), rows, rowMm }, marginMm, tableTop),
    ...sums.flatMap(([words, amount, bold], i): Mark[] => [
      text(right - 45, sumTop + 4 + i * 5.2, words, { align: 'end', bold }),
      text(right - 1, sumTop + 4 + i * 5.2, amount, { align: 'end', bold }),
    ]),
    ...terms.map((words, i) => text(marginMm, footMm + 4 + i * 3.8, words, { sizeMm: 2.6 })),
    ...signature(marginMm, size.heightMm - marginMm - 8, 'Date and signature of the customer'),
    ...signature(
      marginMm + widthMm / 2 + 5,
      size.heightMm - marginMm - 8,
      'Date and signature of the builder',
    ),
  ];
  return { title: 'Quote', pages: [{ ...size, marks }] };
}

/** Rows narrower than this cannot be read. */
const leastRowMm = 3.9;

function columnsOf(widthMm: number) {
  return [
    { title: 'what', widthMm: widthMm - 76 },
    { title: 'count', widthMm: 18, align: 'end' as const },
    { title: 'each', widthMm: 28, align: 'end' as const },
    { title: 'amount', widthMm: 30, align: 'end' as const },
  ];
}

/** What the customer gets. How the shop reckons its hours, overheads and reserve is its own affair. */
function partRows({ lines }: Quote, money: (amount: number) => string): string[][] {
  return lines
    .filter(({ count }) => count > 0)
    .map(({ what, count, unitPrice, amount }) =>
      // No price is no gift.
      [cut(what), `${count}`, ...(unitPrice === 0 ? ['', ''] : [money(unitPrice), money(amount)])],
    );
}

/** One page holds so many; what is over is named, and counted in the sums below all the same. */
function fitRows(rows: string[][], most: number): string[][] {
  if (rows.length <= most) return rows;
  return [
    ...rows.slice(0, Math.max(0, most - 1)),
    [`and ${rows.length - most + 1} further lines, in the sums below`, '', '', ''],
  ];
}

function cut(words: string): string {
  return words.length > 62 ? `${words.slice(0, 59)}...` : words;
}

function sumsOf({ quote, taxPercent }: QuotePaper, money: (amount: number) => string) {
  const work = quote.labour + quote.overheads + quote.reserve;
  const unpriced = quote.labour === 0 && quote.hoursInAll > 0;
  const sums: [words: string, amount: string, bold: boolean][] = [
    ['Parts', quote.parts === 0 ? '' : money(quote.parts), false],
    ['Work', unpriced ? 'not in this sum' : work === 0 ? '' : money(work), false],
    [`Tax, ${taxPercent} %`, quote.tax === 0 ? '' : money(quote.tax), false],
    ['To pay', money(quote.total), true],
    ['Of it as a deposit, before parts are ordered', quote.deposit === 0 ? '' : money(quote.deposit), false],
  ];
  return sums.filter(([, amount]) => amount !== '');
}

function signature(leftMm: number, yMm: number, words: string): Mark[] {
  return [
    line(leftMm, yMm, leftMm + 75, yMm, { widthMm: 0.2 }),
    text(leftMm, yMm + 4, words, { sizeMm: 2.5, ink: 'grey' }),
  ];
}
