import { writeCsv } from '../engine/quote/csv.ts';
import { type Currency, plainMoney } from '../engine/quote/money.ts';

/** By which spreadsheets know the encoding. */
const byteOrderMark = '\uFEFF';

export interface OrderLine {
  what: string;
  count: number;
  spare: number;
  source?: string;
  /** 0 where no price is known. */
  unitPrice: number;
}

/** The order as a file for a spreadsheet. Where no price is known its fields are empty: a 0 would be summed as one. */
export function orderCsv(lines: readonly OrderLine[], currency: Currency): string {
  const head = ['what', 'for it', 'spare', 'from', 'each', 'amount with spares', 'currency'];
  const money = (amount: number) => (amount === 0 ? '' : Number(plainMoney(amount, currency)));
  const rows = lines.map(({ what, count, spare, source, unitPrice }) => [
    what,
    count,
    spare,
    source ?? '',
    money(unitPrice),
    money(Math.round((count + spare) * unitPrice)),
    currency.code,
  ]);
  return `${byteOrderMark}${writeCsv([head, ...rows])}`;
}
