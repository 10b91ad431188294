import { Button } from 'react-aria-components';
import { diameterAt } from '../../../engine/bench/diameter-profile.ts';
import { orderList } from '../../../engine/quote/order-list.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { orderCsv } from '../../../sheets/order-csv.ts';
import { orderSheet } from '../../../sheets/order-sheet.ts';
import { threadCalled } from '../../../words/colour-words.ts';
import { writeMoney } from '../../../words/intl.ts';
import { orderedInWords } from '../../../words/order-line.ts';
import { fileName, handOver } from '../../parts/sheet/hand-over.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { type Paper, useCurrency, useShop } from '../../read/shop.tsx';
import { useWraps } from '../../read/use-wraps.ts';
import { textOf } from '../../read/values.ts';
import { RowsTable } from './rows-table.tsx';
import { useQuote } from './use-quote.ts';

/** The parts, their prices, and the list that goes to the dealers. */
export function OrderPart() {
  const { rows, write, newRowId } = useBuild();
  const lines = rows('quoteLines');
  const needed = useNeeded();
  const fromBuild = () => {
    const known = new Set(lines.map((row) => textOf(row, 'what')));
    const fresh = needed.filter(({ what }) => !known.has(what));
    const changes = fresh.flatMap(({ what, count, spare }, i): Change[] => {
      const id = newRowId();
      return rowChanges('quoteLines', id, {
        order: lines.length + i,
        what: what.slice(0, 200),
        count,
        spare,
      });
    });
    write('partsFromBuild', changes);
  };
  const addLine = () => {
    const id = newRowId();
    write('addLine', rowChanges('quoteLines', id, { order: lines.length, count: 1 }));
  };
  const { csv, draw } = useOrderOut();
  return (
    <Part
      anchor="order"
      folded
      holds={['quoteLines/']}
      title="Parts and order"
      aside="what this rod takes goes into the price; spares are ordered with it"
      tools={
        <>
          <Button className="button" isDisabled={lines.length === 0} onPress={csv}>
            Order as CSV
          </Button>
          <PrintButton sheet="order" isDisabled={lines.length === 0} draw={draw}>
            Order as PDF
          </PrintButton>
        </>
      }
    >
      {lines.length > 0 && (
        <RowsTable
          label="Parts"
          collection="quoteLines"
          rows={lines}
          columns={[
            { field: 'what', head: 'What', label: (n) => `Part ${n}`, folds: true },
            { field: 'count', head: 'This rod', label: (n) => `How many of part ${n}` },
            { field: 'spare', head: 'Spare', label: (n) => `Spares of part ${n}` },
            { field: 'unitPrice', head: 'Each', label: (n) => `Price of part ${n}` },
            { field: 'source', head: 'From', label: (n) => `Part ${n} from`, folds: true },
          ]}
          strike={{ deed: 'removeLine', thing: (n) => `part ${n}` }}
        />
      )}
      <div className="print-line" data-path="quoteLines/new" tabIndex={-1}>
        <Button className={lines.length === 0 ? 'button button-main' : 'button'} onPress={fromBuild}>
          Take the parts from the build
        </Button>
        <Button className="button" onPress={addLine}>
          Add a line
        </Button>
      </div>
      <p className="small quiet">
        Spares by common practice, no source: tip-tops half a size either way, one or two guides of each size.
      </p>
    </Part>
  );
}

/** The order as a table for a spreadsheet, and on paper. */
function useOrderOut() {
  const { title } = useBuild();
  const { quote } = useQuote();
  const currency = useCurrency();
  const csv = () => {
    handOver(orderCsv(quote.lines, currency), 'text/csv;charset=utf-8', `${fileName(title)}-order.csv`);
  };
  const draw = (on: { paper: Paper; stamp: string }) => {
    const money = (amount: number) => (amount === 0 ? '' : writeMoney(amount, currency));
    const order = quote.lines.map((line) => ({
      ...line,
      source: line.source ?? '',
      each: money(line.unitPrice),
      amount: money(Math.round((line.count + line.spare) * line.unitPrice)),
    }));
    return [orderSheet(order, on)];
  };
  return { csv, draw };
}

/** What this build takes, as far as it is known. */
function useNeeded() {
  const { single } = useBuild();
  const { choices, profile } = useBench();
  const { writer } = useShop();
  const wraps = useWraps();
  const needed = orderList({
    blank: textOf(single('blank'), 'label'),
    guides: choices?.guides ?? [],
    tipOutsideM: diameterAt(profile, 0),
    threads: (wraps?.plan.colours ?? []).map((need) => ({
      name: threadCalled(need),
      metres: need.threadM,
      spools: need.spools,
    })),
    gripShape: textOf(single('handle'), 'gripShape'),
  });
  return needed.map((line) => ({
    what: orderedInWords(line, writer),
    count: line.count,
    spare: line.spare,
  }));
}
