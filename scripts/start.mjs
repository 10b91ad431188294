import './boot/check-node.mjs';
import { mkdtempSync, rmSync } from 'node:fs';
import { enableCompileCache } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureBuilt } from './boot/build.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot } from './boot/root.mjs';

const help = `npm start -- [options]
  --data FOLDER   where the record is kept (also: FAIRBEND_DATA)
  --port NUMBER   exactly this port (also: PORT); otherwise 4870 or the next free one
  --share         let phones and tablets of this network in, each paired by a code
  --tls           with --share: by https, with a certificate of the shop's own
  --behind ORIGIN shared through a TLS proxy on this computer (https://rods.example)
  --demo          try it out: a data folder of its own, thrown away at the end
  --no-open       do not open a browser
  --help          this`;

/** `npm start`: installs and builds what is missing, then serves until Ctrl-C. */
async function start() {
  const { values } = parseArgs({
    options: {
      data: { type: 'string' },
      port: { type: 'string' },
      share: { type: 'boolean' },
      tls: { type: 'boolean' },
      behind: { type: 'string' },
      demo: { type: 'boolean' },
      'no-open': { type: 'boolean' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  await ensureInstalled();
  await ensureBuilt();
  // What was compiled is kept from start to start.
  enableCompileCache(inRoot('dist', '.compile-cache'));
  const { runServer, endSoon } = await import(new URL('../dist/server/run-server.js', import.meta.url));
  const thrownAway = values.demo ? mkdtempSync(join(tmpdir(), 'fairbend-demo-')) : undefined;
  process.exitCode = await runServer({
    data: thrownAway ?? values.data,
    port: values.port ?? process.env.PORT,
    share: values.share,
    tls: values.tls,
    behind: values.behind,
    open: !values['no-open'],
    endable: true,
  });
  if (thrownAway) rmSync(thrownAway, { recursive: true, force: true });
  endSoon();
}

await orExplain(start);
