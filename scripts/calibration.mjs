import './boot/check-node.mjs';
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run calibration -- [options]
  --benches N    simulated benches, each read in three ways (200)
  --from SEED    the first one's seed (1001)
  --workers N    processes (2)
  --kind KIND    only blanks of this kind: plain, steps, soft, fast, compound
  --none N       how many of them are judged with diameters alone too (all)
  --next         not the table: what the readings proposed next bring, against readings at random
  --fresh        judge all anew; without it what dist/calibration holds is gone on with
  --help         this
What is promised to a builder against what he then gets on the true rod, over blanks that the fit's own simulator
does not make. Prints the table; about five seconds a bench and processor, half a minute with --next.`;

await orExplain(async () => {
  const { values } = parseArgs({
    options: {
      benches: { type: 'string', default: '200' },
      from: { type: 'string', default: '1001' },
      workers: { type: 'string', default: '2' },
      kind: { type: 'string' },
      none: { type: 'string' },
      next: { type: 'boolean' },
      fresh: { type: 'boolean' },
      part: { type: 'string' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  await ensureInstalled();
  const [benches, from, workers] = [values.benches, values.from, values.workers].map(Number);
  const folder = inRoot('dist', 'calibration');
  const fileOf = (part) =>
    `${folder}/${values.kind ?? ''}${values.next ? 'next' : 'seeds'}-${from}-part-${part}-of-${workers}.jsonl`;
  const { importReference } = await import('./boot/run-reference.mjs');
  if (values.part !== undefined) {
    const { judgeSeeds, judgeNextReadings, seedsOf } = await importBuilt();
    const own = seedsOf(from, benches, values.kind).filter((_, i) => i % workers === +values.part);
    const none = own.filter((seed) => seed < from + Number(values.none ?? benches));
    const told = (left) => left % 20 === 0 && say(`${left} left in part ${values.part}`);
    if (values.next) return judgeNextReadings(own, fileOf(values.part), told);
    judgeSeeds(own, ['one weight', 'full'], fileOf(values.part), told);
    return judgeSeeds(none, ['none'], fileOf(values.part), told);
  }
  mkdirSync(folder, { recursive: true });
  const { rmSync } = await import('node:fs');
  const parts = Array.from({ length: workers }, (_, part) => part);
  if (values.fresh) for (const part of parts) rmSync(fileOf(part), { force: true });
  const { tablesOf, nextReadingCounts } = await importReference('calibration');
  say(`Judging ${benches} benches from seed ${from} …`);
  await Promise.all(
    parts.map((part) =>
      ended([...process.argv.slice(2).filter((a) => a !== '--fresh'), '--part', `${part}`]),
    ),
  );
  const { lines, unbent } = (values.next ? nextReadingCounts : tablesOf)(parts.map(fileOf));
  console.log(lines.join('\n'));
  if (unbent > 0)
    console.log(`${unbent} readings of benches left out: the true rod finds no bend under some load.`);
});

/** What the first process has built. */
function importBuilt() {
  return import(new URL('../dist/reference/calibration/calibration.js', import.meta.url));
}

function ended(args) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [fileURLToPath(import.meta.url), ...args], { stdio: 'inherit' });
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`a part ended with ${code}`))));
  });
}
