import { type Mark, type Page, type Sheet, text } from './drawing.ts';
import { flowBlocks } from './page-flow.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { drawTable, tableHeightMm } from './table.ts';

export interface OrderRow {
  what: string;
  count: number;
  spare: number;
  source: string;
  /** Ready to read; empty where no price is known. */
  each: string;
  amount: string;
}

const rowsOnPage = 36;

/** What to order, with the spares beside it, to be ticked off as it comes in. */
export function orderSheet(
  rows: readonly OrderRow[],
  { paper, stamp }: { paper: PaperName; stamp: string },
): Sheet {
  const size = standingPaper[paper];
  const widthMm = size.widthMm - 2 * marginMm;
  const columns = [
    { title: 'what', widthMm: widthMm - 118 },
    { title: 'for it', widthMm: 14, align: 'end' as const },
    { title: 'spare', widthMm: 14, align: 'end' as const },
    { title: 'from', widthMm: 34 },
    { title: 'each', widthMm: 24, align: 'end' as const },
    { title: 'amount', widthMm: 24, align: 'end' as const },
    { title: 'in', widthMm: 8 },
  ];
  const blocks = Array.from({ length: Math.max(1, Math.ceil(rows.length / rowsOnPage)) }, (_, i) => {
    const cells = rows
      .slice(i * rowsOnPage, (i + 1) * rowsOnPage)
      .map(({ what, count, spare, source, each, amount }) => [
        cut(what, 44),
        `${count}`,
        `${spare}`,
        cut(source, 20),
        each,
        amount,
        '',
      ]);
    return {
      heightMm: tableHeightMm({ rows: cells }),
      draw: (topMm: number): Mark[] => drawTable({ columns, rows: cells }, marginMm, topMm),
    };
  });
  const pages = flowBlocks(blocks, { topMm: marginMm + 10, bottomMm: size.heightMm - marginMm, gapMm: 5 });
  return {
    title: 'Order list',
    pages: pages.map(
      (marks, i): Page => ({
        ...size,
        marks: [
          text(marginMm, marginMm + 4, `Order list · ${stamp} · page ${i + 1} of ${pages.length}`, {
            bold: true,
          }),
          ...marks,
        ],
      }),
    ),
  };
}

function cut(words: string, most: number): string {
  return words.length > most ? `${words.slice(0, most - 3)}...` : words;
}
