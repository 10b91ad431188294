import './boot/check-node.mjs';
import { parseArgs } from 'node:util';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { say } from './boot/root.mjs';

const help = `npm run soak -- [options]
  --rods N   how many random rods (100000)
  --seed N   the first seed (1)
  --help     this
Bends random rods and fails on any that is neither bent nor refused by name.`;

await orExplain(async () => {
  const options = { rods: { type: 'string' }, seed: { type: 'string' }, help: { type: 'boolean' } };
  const { values } = parseArgs({ options });
  if (values.help) return console.log(help);
  const rods = wholeNumber('--rods', values.rods ?? '100000');
  const firstSeed = wholeNumber('--seed', values.seed ?? '1');
  await ensureInstalled();
  const { importReference } = await import('./boot/run-reference.mjs');
  const { soak } = await importReference('soak');
  const started = performance.now();
  const results = soak({
    firstSeed,
    rods,
    onProgress: (done) => done % 10_000 === 0 && say(`${done} of ${rods}`),
  });
  for (const { faults, ...result } of results) console.log(JSON.stringify(result));
  const faults = results.flatMap((result) => result.faults);
  for (const fault of faults.slice(0, 50)) console.log(`FAULT ${fault}`);
  console.log(
    `${rods} rods, ${faults.length} faults, ${((performance.now() - started) / 1000).toFixed(0)} s`,
  );
  if (faults.length > 0) process.exitCode = 1;
});

function wholeNumber(name, text) {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1)
    throw new Error(`${name} is ${text}; give a whole number from 1`);
  return value;
}
