import { type Currency, writeMoney } from '../../engine/quote/money.ts';
import type { Quote } from '../../engine/quote/quote.ts';
import { TableFrame } from '../shell/table-frame.tsx';

/** How the price comes about. */
export function QuoteSums({ quote, currency }: { quote: Quote; currency: Currency }) {
  const rows: [name: string, amount: number][] = [
    ['Parts', quote.parts],
    [`Work, ${quote.hoursInAll} h`, quote.labour],
    ['Overheads', quote.overheads],
    ['Reserve', quote.reserve],
    ['Tax', quote.tax],
    ['To pay', quote.total],
    ['Of it as a deposit', quote.deposit],
  ];
  return (
    <TableFrame label="How the price comes about">
      <table className="figures-table">
        <thead>
          <tr>
            <th scope="col">The price</th>
            <th scope="col">Amount</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, amount]) => (
            <tr key={name}>
              <th scope="row">{name === 'To pay' ? <strong>{name}</strong> : name}</th>
              <td className="papers-amount">{writeMoney(amount, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
}
