import { spawn, spawnSync } from 'node:child_process';
import {
  chownSync,
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/**
 * A PostgreSQL server of its own for tests: a new cluster in a temporary folder, on a free port of this computer,
 * gone after `stop`. Where it cannot be, `missing` says why in one sentence.
 */
export async function startPostgres() {
  const folder = binaryFolder();
  if (!folder) return { missing: 'no PostgreSQL was found (Debian: apt-get install postgresql)' };
  const account = accountToUse();
  if (account.missing) return account;
  const home = mkdtempSync(join(tmpdir(), 'fairbend-postgres-'));
  if (account.uid !== undefined) chownSync(home, account.uid, account.gid);
  const data = join(home, 'data');
  const as = { ...account, cwd: home, env: { PATH: process.env.PATH, LC_ALL: 'C.UTF-8' } };
  const made = spawnSync(
    join(folder, 'initdb'),
    ['-D', data, '-U', 'fairbend', '--auth=trust', '-E', 'UTF8', '--locale=C.UTF-8', '--no-instructions'],
    { ...as, encoding: 'utf8' },
  );
  if (made.status !== 0) {
    rmSync(home, { recursive: true, force: true });
    return {
      missing: `a test cluster could not be made: ${(made.stderr ?? made.error?.message ?? '').trim()}`,
    };
  }
  const port = await freePort();
  const settings = {
    listen_addresses: '127.0.0.1',
    port,
    unix_socket_directories: home,
    max_connections: 200,
    // The tests kill Fairbend and never this cluster: nothing in it need outlive the computer.
    fsync: 'off',
    full_page_writes: 'off',
  };
  // To a file: a pipe that nobody empties while a test run blocks this process would stop the server when full.
  const log = join(home, 'log');
  const logFile = openSync(log, 'a');
  const server = spawn(
    join(folder, 'postgres'),
    ['-D', data, ...Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`])],
    { ...as, stdio: ['ignore', 'ignore', logFile] },
  );
  closeSync(logFile);
  const gone = new Promise((resolve) => server.once('exit', resolve));
  process.once('exit', () => server.kill('SIGINT'));
  const stop = async () => {
    // SIGINT is PostgreSQL's fast shutdown: clients are cut off, what was committed stays.
    server.kill('SIGINT');
    await gone;
    rmSync(home, { recursive: true, force: true });
  };
  if (await ready(folder, port, server)) {
    const address = `postgres://fairbend@127.0.0.1:${port}/postgres`;
    return { address, stop, pid: server.pid };
  }
  const said = readFileSync(log, 'utf8').slice(-4000).trim();
  await stop();
  return { missing: `PostgreSQL did not start: ${said}` };
}

/** On the path, or where Debian keeps each version; the newest. */
function binaryFolder() {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [
    ...(process.env.PATH ?? '').split(':'),
    ...versions.map((version) => join(debian, version, 'bin')),
  ];
  const needed = ['initdb', 'postgres', 'pg_isready'];
  return folders.find((folder) => needed.every((name) => existsSync(join(folder, name))));
}

/** PostgreSQL refuses to run as root; as root it runs as the account its package made. */
function accountToUse() {
  if (process.getuid?.() !== 0) return {};
  const idOf = (flag) =>
    Number(spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' }).stdout || Number.NaN);
  const [uid, gid] = [idOf('-u'), idOf('-g')];
  if (Number.isInteger(uid) && Number.isInteger(gid)) return { uid, gid };
  return { missing: 'PostgreSQL does not run as root, and there is no account "postgres" to run it as' };
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

async function ready(folder, port, server) {
  const parameters = ['-q', '-h', '127.0.0.1', '-p', String(port), '-U', 'fairbend', '-d', 'postgres'];
  for (let tries = 0; tries < 150 && server.exitCode === null; tries++) {
    if (spawnSync(join(folder, 'pg_isready'), parameters).status === 0) return true;
    await wait(200);
  }
  return false;
}
