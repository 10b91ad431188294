import './boot/check-node.mjs';
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run bench -- [options]
  --quick       a tenth of the time on every row
  --no-live     without scipy and CalculiX
  --json FILE   where to write the numbers (dist/bench.json)
  --help        this
Times the engine's work, warm and in one process; prints a table and writes JSON. Times on a busy machine mislead.`;

await orExplain(async () => {
  const { values } = parseArgs({
    options: {
      quick: { type: 'boolean' },
      'no-live': { type: 'boolean' },
      json: { type: 'string' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  await ensureInstalled();
  const { importReference } = await import('./boot/run-reference.mjs');
  const { benchAll } = await importReference('bench');
  say('Timing …');
  const rows = await benchAll({ quick: values.quick === true, live: !values['no-live'] });
  for (const row of rows) console.log(lineOf(row));
  const file = values.json ?? inRoot('dist', 'bench.json');
  const machine = { node: process.version, processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
  writeFileSync(file, `${JSON.stringify({ machine, rows }, null, 2)}\n`);
  say(`The numbers are in ${file}.`);
});

function lineOf({ work, value, unit, target, note }) {
  const shown = value === undefined ? 'not run' : `${value.toPrecision(3)} ${unit}`;
  const wanted = target?.atMost !== undefined ? `≤ ${target.atMost}` : target ? `≥ ${target.atLeast}` : '';
  return [
    work.padEnd(58),
    shown.padStart(16),
    wanted.padStart(8),
    verdictOf(value, target).padEnd(7),
    note ?? '',
  ].join('  ');
}

function verdictOf(value, target) {
  if (!target || value === undefined) return '';
  return value <= (target.atMost ?? Infinity) && value >= (target.atLeast ?? -Infinity) ? 'met' : 'MISSED';
}
