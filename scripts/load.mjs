import './boot/check-node.mjs';
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureCompiled } from './boot/build.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { startPostgres } from './boot/postgres.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run load -- [options]
  --benches N     simulated benches (10 on SQLite, 50 on PostgreSQL)
  --edits N       edits of each (60)
  --pause MS      longest pause between two edits of a bench (1000)
  --only NAME     sqlite or postgres
  --soak          ten times the edits, and fails on memory that grows
  --beside N      on a shelf of N builds, and while a build file of 14 MB is taken in and the shop is exported
  --json FILE     where to write the numbers (dist/load.json)
  --help          this
Fails on an edit that is lost. Times on a busy machine mislead.`;

await orExplain(async () => {
  const options = {
    benches: 'string',
    edits: 'string',
    pause: 'string',
    only: 'string',
    json: 'string',
    beside: 'string',
  };
  const { values } = parseArgs({
    options: {
      ...Object.fromEntries(Object.entries(options).map(([name, type]) => [name, { type }])),
      soak: { type: 'boolean' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  await ensureInstalled();
  await ensureCompiled();
  const rows = [];
  for (const database of values.only ? [values.only] : ['sqlite', 'postgres']) {
    const row = await loadOn(database, values);
    rows.push(row);
    console.log(JSON.stringify(row));
    if (row.lost > 0 || row.unheard > 0 || (values.soak && row.grows)) process.exitCode = 1;
  }
  const file = values.json ?? inRoot('dist', 'load.json');
  writeFileSync(file, `${JSON.stringify({ node: process.version, rows }, null, 2)}\n`);
  say(`The numbers are in ${file}.`);
});

async function loadOn(database, { benches, edits = '60', pause = '1000', soak, beside }) {
  const { importReference } = await import('./boot/run-reference.mjs');
  const { simulateLoad } = await importReference('load');
  const { fillShelf, workBeside } = await importReference('load-beside');
  const postgres = database === 'postgres' ? await startPostgres() : undefined;
  if (postgres?.missing) return { database, notRun: postgres.missing };
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-load-'));
  const count = postgres ? 2 : 1;
  const servers = [];
  try {
    for (let number = 0; number < count; number++)
      servers.push(await startServer(join(folder, `s${number}`), postgres?.address));
    const over = new AbortController();
    if (beside) await fillShelf(servers[0].address, Number(beside));
    const others = beside && workBeside(servers[0].address, Number(beside), over.signal);
    const found = await simulateLoad({
      addresses: servers.map(({ address }) => address),
      pids: servers.map(({ child }) => child.pid),
      databasePid: postgres?.pid,
      benches: Number(benches ?? (postgres ? 50 : 10)),
      editsEach: Number(edits) * (soak ? 10 : 1),
      pauseMs: Number(pause),
    });
    over.abort();
    return {
      database,
      servers: count,
      benches: Number(benches ?? (postgres ? 50 : 10)),
      ...found,
      ...(beside ? { beside: await others } : {}),
      grows: grows(found),
    };
  } finally {
    for (const { child } of servers) child.kill('SIGTERM');
    await Promise.all(servers.map(({ gone }) => gone));
    await postgres?.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Whether the last three tenths hold a fifth more than the three after the first, in which all is loaded. */
function grows({ megabytes }) {
  const mean = (part) => part.reduce((sum, value) => sum + value, 0) / part.length;
  return megabytes.length >= 10 && mean(megabytes.slice(-3)) > 1.2 * mean(megabytes.slice(1, 4));
}

function startServer(dataFolder, databaseUrl) {
  const program = `
    const { serve } = await import(${JSON.stringify(inRoot('dist', 'server', 'serve.js'))});
    const server = await serve(${JSON.stringify({ dataFolder, databaseUrl, port: 0 })});
    console.log('listening ' + server.address);
    process.once('SIGTERM', async () => { await server.close(); process.exit(0); });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = new Promise((resolve) => child.once('exit', resolve));
  return new Promise((resolve, reject) => {
    void gone.then((code) => reject(new Error(`A server ended with ${code}`)));
    child.stdout.on('data', (text) => {
      const [, address] = /listening (\S+)/.exec(String(text)) ?? [];
      if (address) resolve({ address, child, gone });
    });
  });
}
