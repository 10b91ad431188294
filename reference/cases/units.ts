import { readQuantity } from '../../src/engine/units/read-quantity.ts';
import { inWords } from '../../test/support/in-words.ts';
import { checkRowsOf } from '../check-values.ts';
import type { Check, CheckGroup } from './check.ts';

/** Tip-top tube sizes and line masses as a builder types them. */
export function unitsAsTyped(): CheckGroup {
  const tubes = checkRowsOf('tiptube.').map((row): Check => {
    const [, theirsMm] = row.value as number[];
    const typed = `${2 * (row.inputs.k as number)}/128 in`;
    const ours = 1000 * read(typed, 'length');
    return {
      ...row,
      quantity: `${row.quantity}: ${typed}`,
      unit: 'mm',
      ours,
      theirs: theirsMm,
      allowance: 1e-6,
    };
  });
  const lines = checkRowsOf('flyline.').filter((row) => row.id.endsWith('.grams'));
  const masses = lines.flatMap((row) => {
    const grains = checkRowsOf(row.id.replace('.grams', '.grains'))[0].value as number[];
    return (row.value as number[]).map(
      (theirs, k): Check => ({
        ...row,
        id: `${row.id}[${k}]`,
        quantity: `line ${row.inputs.line_no}, ${['low', 'target', 'high'][k]}: ${grains[k]} gr`,
        unit: 'g',
        ours: 1000 * read(`${grains[k]} gr`, 'mass'),
        theirs,
        allowance: 5.1e-5,
      }),
    );
  });
  const about =
    'Tube sizes in 64ths of an inch and line masses in grains, typed as text, read by the tool; the table of line masses is rounded to 0.1 mg.';
  return { title: 'Tube sizes and line masses as typed', about, checks: [...tubes, ...masses] };
}

function read(typed: string, dimension: 'length' | 'mass'): number {
  const quantity = readQuantity(typed, { dimension, system: 'inch' });
  if (!quantity.ok) throw new Error(inWords(quantity.finding));
  return quantity.si;
}
