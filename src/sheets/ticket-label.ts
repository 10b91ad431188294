import { frame, line, type Mark, type Sheet, text } from './drawing.ts';
import { fittedWords } from './fitted-words.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';

export interface TicketLabel {
  number: string;
  rod: string;
  customer: string;
  contact: string;
  broken: string;
  promised: string;
  price: string;
  shop: string;
}

const widthMm = 95;
const heightMm = 58;

/** Two labels to cut out: one for the rod, one for the customer. */
export function ticketLabel(label: TicketLabel, paper: PaperName): Sheet {
  const size = standingPaper[paper];
  const halves = ['On the rod', 'For the customer'].map((whose, i) =>
    oneLabel(label, whose, marginMm, marginMm + i * (heightMm + 8)),
  );
  return { title: `Repair ${label.number}`, pages: [{ ...size, marks: halves.flat() }] };
}

function oneLabel(label: TicketLabel, whose: string, leftMm: number, topMm: number): Mark[] {
  const lines: [words: string, sizeMm: number, bold: boolean][] = [
    [label.rod, 4.4, true],
    [[label.customer, label.contact].filter((words) => words !== '').join(', '), 3.4, false],
    [label.broken === '' ? '' : `Broken: ${label.broken}`, 3.4, false],
    [label.promised === '' ? '' : `Promised for ${label.promised}`, 3.8, true],
    [label.price === '' ? '' : `Price ${label.price}`, 3.4, false],
  ];
  let y = topMm + 17;
  const said = lines.flatMap(([words, sizeMm, bold]) => {
    if (words === '') return [];
    y += sizeMm + 3.2;
    return [text(leftMm + 4, y, fittedWords(words, widthMm - 8, sizeMm, bold), { sizeMm, bold })];
  });
  return [
    ...frame(leftMm, topMm, widthMm, heightMm),
    text(leftMm + 4, topMm + 11, label.number, { sizeMm: 7, bold: true }),
    text(leftMm + widthMm - 4, topMm + 6, whose, { sizeMm: 2.6, align: 'end', ink: 'grey' }),
    text(leftMm + widthMm - 4, topMm + 11, fittedWords(label.shop, 50, 3), { align: 'end' }),
    line(leftMm + 4, topMm + 15, leftMm + widthMm - 4, topMm + 15, { widthMm: 0.2 }),
    ...said,
  ];
}
