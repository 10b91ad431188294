/**
 * What a rod is offered for.
 *
 *   parts + labour, + overheads on labour, + reserve on all of it, + tax on all of that
 *
 * The reserve stands for what goes wrong; the deposit is a share of the whole and never less than the parts, which
 * have to be ordered (common practice, no source). Every line is rounded once, so that the sum is the sum of the
 * lines as they are printed.
 */
import { percentOf, roundMoney } from './money.ts';

interface QuoteLine {
  what: string;
  count: number;
  unitPrice: number;
  spare: number;
  source?: string;
}
interface QuoteHours {
  stage: string;
  hours: number;
}
interface QuoteInput {
  lines: readonly QuoteLine[];
  hours: readonly QuoteHours[];
  hourlyRate: number;
  overheadPercent: number;
  reservePercent: number;
  depositPercent: number;
  taxPercent: number;
}
export interface Quote {
  lines: (QuoteLine & { amount: number })[];
  hours: (QuoteHours & { amount: number })[];
  parts: number;
  labour: number;
  overheads: number;
  reserve: number;
  beforeTax: number;
  tax: number;
  total: number;
  deposit: number;
  hoursInAll: number;
}

/** Hours at which a rod is commonly built, first and practised hand; common practice, no source. */
export const commonHours = {
  talk: 1,
  'check-in': 0.5,
  handle: 1.5,
  guides: 0.5,
  layout: 1,
  wraps: 3.5,
  finish: 1,
  delivery: 0.5,
} as const;

export function makeQuote(input: QuoteInput): Quote {
  const lines = input.lines.map((line) => ({ ...line, amount: roundMoney(line.count * line.unitPrice) }));
  const hours = input.hours.map((line) => ({ ...line, amount: roundMoney(line.hours * input.hourlyRate) }));
  const sum = (amounts: readonly { amount: number }[]) =>
    amounts.reduce((total, { amount }) => total + amount, 0);
  const [parts, labour] = [sum(lines), sum(hours)];
  const overheads = percentOf(labour, input.overheadPercent);
  const reserve = percentOf(parts + labour + overheads, input.reservePercent);
  const beforeTax = parts + labour + overheads + reserve;
  const tax = percentOf(beforeTax, input.taxPercent);
  const total = beforeTax + tax;
  const share = percentOf(total, input.depositPercent);
  return {
    lines,
    hours,
    parts,
    labour,
    overheads,
    reserve,
    beforeTax,
    tax,
    total,
    deposit: input.depositPercent > 0 ? Math.min(total, Math.max(share, parts)) : 0,
    hoursInAll: input.hours.reduce((all, line) => all + line.hours, 0),
  };
}
