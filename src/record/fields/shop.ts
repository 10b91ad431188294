/** What holds for every build of the shop. */
import { labelStockNames } from '../../engine/delivery/label-stock.ts';
import { choice, length, many, order, real, rule, single, text } from './declare.ts';
import { paperNames, quoteRates, stripPaperNames } from './delivered.ts';
import { tapeSteps, unitNames } from './layout.ts';

export const settings = single('Settings', {
  /** Decides what a bare number means. */
  unitSystem: choice('a bare number is read as', unitNames),
  tapeStep: choice('marks are rounded to', tapeSteps),
  paper: choice('paper', paperNames),
  /** Empty: the shop's paper. */
  stripPaper: choice('strips on', stripPaperNames, { folded: true }),
  labels: choice('labels', labelStockNames, { folded: true }),
  rollWidth: length('roll, how wide', [0.16, 1.6]),
  rollLength: length('longest print', [0.2, 5], { hint: 'empty: as long as a section' }),
  colours: choice(
    'colours',
    { auto: 'as this device has them', day: 'ink on paper', night: 'chalk on slate' },
    { usual: 'auto' },
  ),
  weighsIn: choice('masses are in', { g: 'grams', oz: 'ounces' }, { usual: 'g' }),
  temperatureIn: choice('temperatures are in', { C: '°C', F: '°F' }),
  /** Of the record without its backups. At it no picture and no file is taken in; changes are. */
  spaceLimitMb: real('the record may take', [1, 10_000_000], { unit: 'MB', empty: 'no limit' }),
});

/** How this shop reckons, and what stands at the head of its papers. */
export const rates = single('Rates', {
  shopName: text('name on papers', 200),
  shopAddress: text('address on papers', 1000, { lines: 3 }),
  /** Three letters of ISO 4217. */
  currency: text('currency', 3),
  ...quoteRates,
  terms: text('terms on quotes', 4000, { lines: 3 }),
});

/** What the printed 100 mm and 4 in rules measured, per printer and paper; the next print is corrected by it. */
export const printers = many('Printer', {
  order: order(),
  name: text('printer', 120),
  paper: choice('paper', stripPaperNames, { folded: true, usual: 'a4' }),
  ruleAcross: rule('the 100 mm rule across measured', [0.05, 0.2], { empty: '100 mm' }),
  ruleAlong: rule('the 100 mm rule along measured', [0.05, 0.2], { empty: '100 mm' }),
});
