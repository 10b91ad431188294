import './boot/check-node.mjs';
import { ensureCompiled } from './boot/build.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';

/** `npm run --silent fairbend -- COMMAND`: the command line, built first where it is stale. */
await orExplain(async () => {
  await ensureInstalled();
  await ensureCompiled();
  await import(new URL('../dist/cli/main.js', import.meta.url));
});
