import type { AssembledBlank } from '../engine/bench/assemble.ts';
import type { RuledLoad } from '../engine/layout/rule-reading.ts';
import { type MarksList, marksInOrder } from '../engine/marks/marks-list.ts';
import type { LadderWriter } from '../words/ladder-writer.ts';
import { rodFacts } from '../words/rod-facts.ts';
import type { CustomerBend } from './bend-figure.ts';
import type { CustomerRod } from './customer-page.ts';

export interface FinishedRod {
  title: string;
  number: string;
  shop: string;
  date: string;
  customer: string;
  lineWeight: string;
  madeOf: readonly string[];
  blank: AssembledBlank;
  /** The marks it was wrapped at. */
  marks?: MarksList;
  /** Its bend under the ladder, as far as it was worked out. */
  loads: readonly RuledLoad[];
  handleM: number;
  /** Its drops were read, so that the bend is this blank's own. */
  measured: boolean;
}

/** What the customer's page says of a build, from the screen's and the command line's same figures. */
export function customerRod(rod: FinishedRod, writer: LadderWriter): CustomerRod {
  const { title, number, shop, date, customer, madeOf, marks, blank, lineWeight } = rod;
  const guides = marks ? marksInOrder(marks) : [];
  return {
    title,
    number,
    shop,
    date,
    customer,
    madeOf,
    facts: rodFacts(blank, lineWeight, writer.units),
    guides: guides.map(({ guide, name, fromTipM }) => ({
      guide,
      name,
      fromTip: writer.mark(fromTipM).replaceAll('⁄', '/'),
    })),
    bend: bendOf(rod, writer),
  };
}

function bendOf({ loads, handleM, measured }: FinishedRod, writer: LadderWriter): CustomerBend | undefined {
  const bent = loads.flatMap((load, k) =>
    load.status === 'converged' ? [{ load, name: writer.loads[k] }] : [],
  );
  if (bent.length === 0) return undefined;
  const inch = writer.units === 'inch';
  return {
    loads: bent.map(({ load }) => load),
    names: bent.map(({ name }) => name),
    handleM,
    squareM: inch ? 12 * 0.0254 : 0.25,
    squareWords: inch ? '12 in' : '250 mm',
    measured,
  };
}
