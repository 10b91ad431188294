import './boot/check-node.mjs';
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { auditDependencies } from './boot/audit.mjs';
import { ensureBuilt } from './boot/build.mjs';
import { findOrInstallChromium } from './boot/find-chromium.mjs';
import { ensureInstalled } from './boot/install.mjs';
import { cleanEnvironment } from './boot/npm.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { startPostgres } from './boot/postgres.mjs';
import { inRoot, root } from './boot/root.mjs';

const help = `npm test -- [options]
  --long    the long runs too: 200 kills of the server, 7,200 edits with memory watched, a stranger who
            hammers for five minutes, 10,000 malformed requests,
            200 photographs, 12 painted close-ups, 48 pictures of one rod and of two, 24 judged rods, 200 simulated
            benches (band, slips, marks), twelve of them read by proposal and at random, the page of every example
            beside its report, the first hour on every screen
  --unit    only the tests that need neither a browser nor PostgreSQL, without types and lint
  --node    of those, what rests on the Node at hand: server, the command line's files, paper, pictures' files
  --help    this
REQUIRE_BROWSER=1 makes missing browser tests a failure.  CHROME names the Chromium to use.
REQUIRE_POSTGRES=1 the same for those on PostgreSQL.  TEST_DATABASE_URL names a server to use instead of one of
their own; its account must be allowed to make databases.`;

const tally = { passed: 0, failed: 0, skipped: 0 };

/** `npm test`: everything that must hold, and one line at the end that counts it. */
async function testAll() {
  const { values } = parseArgs({
    options: {
      long: { type: 'boolean' },
      unit: { type: 'boolean' },
      node: { type: 'boolean' },
      help: { type: 'boolean' },
    },
  });
  if (values.help) return console.log(help);
  try {
    await ensureInstalled();
    await runChecks(values);
  } catch (error) {
    console.error(error.message);
    count(false, 'Set-up');
  }
  report();
}

const restsOnNode = ['server/', 'cli/shop-commands', 'cli/habits-in-file', 'paper/', 'image/decode/'].map(
  (part) => `src/${part}`,
);

async function runChecks({ long, unit, node }) {
  const environment = {
    ...cleanEnvironment(process.env),
    ...(long
      ? {
          EXAMPLES: 'all',
          WALKS: 'all',
          KILLS: '200',
          SOAK_ROUNDS: '60',
          STRANGER_SECONDS: '300',
          SERIES: '30',
          FUZZ_REQUESTS: '10000',
          PHOTOS: '40',
          RODS: '24',
          JOINED_PICTURES: '12',
          PHOTO_BLANKS: '200',
          JUDGED_RODS: '24',
          BENCHES: '200',
          POLICY_BENCHES: '12',
        }
      : {}),
  };
  const withoutServer = { ...environment, TEST_DATABASE_URL: '' };
  if (node) return vitest('Tests', 'vitest.config.ts', withoutServer, restsOnNode);
  if (unit) return vitest('Tests', 'vitest.config.ts', withoutServer);
  audit();
  check('Types of the programs', inRoot('node_modules', 'typescript', 'bin', 'tsc'), '-b');
  check('Types of the tests', inRoot('node_modules', 'typescript', 'bin', 'tsc'), '-p', 'tsconfig.test.json');
  check(
    'Lint and format',
    inRoot('node_modules', '@biomejs', 'biome', 'bin', 'biome'),
    'check',
    '--error-on-warnings',
  );
  const built = await build();
  vitest('Tests', 'vitest.config.ts', withoutServer);
  await postgresTests(environment);
  browserTests(built, environment);
}

/** Known faults of what is shipped. Not every registry answers; without an answer nothing is known, and said so. */
function audit() {
  heading('Audit of the dependencies');
  const { answer, high } = auditDependencies();
  if (answer === undefined)
    console.log('The audit DID NOT RUN: the registry does not answer such questions.');
  else {
    console.log(answer);
    count(high === 0, `Audit: ${high} high or critical`);
  }
}

/** A step that passes or fails as a whole. */
function check(title, script, ...parameters) {
  heading(title);
  const { status } = spawnSync(process.execPath, [script, ...parameters], { cwd: root, stdio: 'inherit' });
  count(status === 0, title);
}

async function build() {
  heading('Build');
  try {
    await ensureBuilt();
    count(true, 'Build');
    return true;
  } catch (error) {
    console.error(error.message);
    count(false, 'Build');
    return false;
  }
}

/** On a server started for them, unless one is named. */
async function postgresTests(environment) {
  const { missing, address, stop } = environment.TEST_DATABASE_URL
    ? { address: environment.TEST_DATABASE_URL, stop: async () => undefined }
    : await startPostgres();
  if (missing) {
    heading('Tests on PostgreSQL');
    console.log(`The tests on PostgreSQL DID NOT RUN: ${missing}.`);
    if (environment.REQUIRE_POSTGRES === '1') count(false, 'Tests on PostgreSQL (REQUIRE_POSTGRES=1)');
    return;
  }
  try {
    vitest('Tests on PostgreSQL', 'vitest.postgres.config.ts', {
      ...environment,
      TEST_DATABASE_URL: address,
      ...postgresShare,
    });
  } finally {
    await stop();
  }
}

/** The long runs are on SQLite; here a share of each. */
const postgresShare = { KILLS: '20', FUZZ_REQUESTS: '1000' };

function browserTests(built, environment) {
  const chrome = findOrInstallChromium();
  const missing = !chrome
    ? 'no Chromium, Chrome or Edge was found. Install one (Debian: apt-get install chromium), or set CHROME to its file'
    : !built && 'the page could not be built';
  if (!missing)
    return vitest('Browser tests', 'vitest.browser.config.ts', { ...environment, CHROME: chrome });
  heading('Browser tests');
  console.log(`The browser tests DID NOT RUN: ${missing}.`);
  if (environment.REQUIRE_BROWSER === '1') count(false, 'Browser tests (REQUIRE_BROWSER=1)');
}

/** Runs a vitest configuration, or what of it lies `only` in some folders, and adds its own counts. */
function vitest(title, config, environment, only = []) {
  heading(title);
  const results = inRoot('.stamp', `${config}.json`);
  mkdirSync(inRoot('.stamp'), { recursive: true });
  rmSync(results, { force: true });
  const parameters = [
    'run',
    '--config',
    config,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${results}`,
    ...only,
  ];
  const { status } = spawnSync(
    process.execPath,
    [inRoot('node_modules', 'vitest', 'vitest.mjs'), ...parameters],
    {
      cwd: root,
      stdio: 'inherit',
      env: environment,
    },
  );
  const counts = readCounts(results);
  tally.passed += counts.passed;
  tally.failed += counts.failed;
  tally.skipped += counts.skipped;
  // A file that did not load, an error outside any test, a crash: no single test says so.
  if (status !== 0 && counts.failed === 0) count(false, `${title} (ended with ${status})`);
}

function readCounts(file) {
  try {
    const results = JSON.parse(readFileSync(file, 'utf8'));
    return {
      passed: results.numPassedTests,
      failed: results.numFailedTests,
      skipped: results.numPendingTests + (results.numTodoTests ?? 0),
    };
  } catch {
    return { passed: 0, failed: 0, skipped: 0 };
  }
}

function heading(title) {
  console.log(`\n=== ${title}`);
}

function count(passed, title) {
  tally[passed ? 'passed' : 'failed'] += 1;
  if (!passed) console.log(`FAILED: ${title}`);
}

function report() {
  const { passed, failed, skipped } = tally;
  console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  if (failed > 0) process.exitCode = 1;
}

await orExplain(testAll);
