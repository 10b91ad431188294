import './boot/check-node.mjs';
import { parseArgs } from 'node:util';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run verify -- [options]
  --light   without scipy and CalculiX (their rows then say 'not run')
  --help    this
Runs every check against the outside and writes docs/verification.md.`;

await orExplain(async () => {
  const { values } = parseArgs({ options: { light: { type: 'boolean' }, help: { type: 'boolean' } } });
  if (values.help) return console.log(help);
  await ensureInstalled();
  const { importReference } = await import('./boot/run-reference.mjs');
  say('Running the checks …');
  const { verify } = await importReference('verify');
  const { failed, notRun } = verify({ live: !values.light, folder: inRoot('docs') });
  for (const line of notRun) console.log(`not run: ${line}`);
  console.log(failed === 0 ? 'Every check that ran passed.' : `${failed} checks FAILED.`);
  console.log('docs/verification.md is written.');
  if (failed > 0) process.exitCode = 1;
});
