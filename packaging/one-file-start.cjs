// The first code of the one-file program: lays its files into the cache folder once, then starts the server there.
const { createHash } = require('node:crypto');
const { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } = require('node:fs');
const { createRequire } = require('node:module');
const { homedir, tmpdir } = require('node:os');
const { dirname, join } = require('node:path');
const { getAsset } = require('node:sea');
const { parseArgs } = require('node:util');

const help = `fairbend [options]
  --data FOLDER   where the record is kept (also: FAIRBEND_DATA)
  --port NUMBER   exactly this port (also: PORT); otherwise 4870 or the next free one
  --share         let phones and tablets of this network in, each paired by a code
  --tls           with --share: by https, with a certificate of the shop's own
  --behind ORIGIN shared through a TLS proxy on this computer (https://rods.example)
  --no-open       do not open a browser
  --help          this`;

const text = { type: 'string' };
const flag = { type: 'boolean' };
const options = { data: text, port: text, share: flag, tls: flag, behind: text, 'no-open': flag, help: flag };

function main() {
  const { values } = parseArgs({ options });
  if (values.help) return console.log(help);
  const start = join(unpacked(), 'dist', 'server', 'run-server.js');
  const { runServer } = createRequire(start)(start);
  const port = values.port ?? process.env.PORT;
  void runServer({ ...values, port, open: !values['no-open'], endable: true }).then((code) => process.exit(code));
}

/** Beside its final place first: half of it is never taken for the whole. */
function unpacked() {
  const index = getAsset('index.json', 'utf8');
  const version = createHash('sha256').update(index).digest('hex').slice(0, 16);
  const folder = join(cacheFolder(), version);
  if (existsSync(folder)) {
    utimesSync(folder, new Date(), new Date());
    return folder;
  }
  removeOld();
  const part = `${folder}.${process.pid}.part`;
  for (const { path } of JSON.parse(index)) {
    const file = join(part, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, new Uint8Array(getAsset(path)));
  }
  try {
    renameSync(part, folder);
  } catch (error) {
    rmSync(part, { recursive: true, force: true });
    // Another start was quicker.
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

/** What programs of before laid there; one that may still run is left. */
function removeOld() {
  const monthMs = 30 * 24 * 3600 * 1000;
  for (const name of existsSync(cacheFolder()) ? readdirSync(cacheFolder()) : []) {
    const old = join(cacheFolder(), name);
    if (Date.now() - statSync(old).mtimeMs > monthMs) rmSync(old, { recursive: true, force: true });
  }
}

function cacheFolder() {
  const { LOCALAPPDATA, XDG_CACHE_HOME } = process.env;
  const base = LOCALAPPDATA ?? XDG_CACHE_HOME ?? (homedir() ? join(homedir(), '.cache') : tmpdir());
  return join(base, 'fairbend');
}

try {
  main();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
