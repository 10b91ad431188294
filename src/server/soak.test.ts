import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { simulateLoad } from '../../reference/load.ts';
import { judgeMemory, type MemoryLook, memoryDefaults } from '../../reference/memory-judge.ts';
import { type ScratchDatabase, scratchDatabase } from '../../test/kit/scratch-database.ts';
import { compileServer, seededRandom } from '../../test/kit/server-process.ts';
import { WatchedServer } from '../../test/kit/watched-server.ts';

/** Rounds of editing, each with pages that come and go; more in a long run, which PostgreSQL has alone. */
const rounds = Number(process.env.SOAK_ROUNDS ?? 10);
const [benches, editsEach] = [6, 20];

describe('the judge of memory', () => {
  const looks = (bytesPerEdit: number, noiseBytes: number, warmUpBytes = 0) => {
    const random = seededRandom(7);
    return Array.from({ length: 14 }, (_, look): MemoryLook => {
      const edits = 150 * look;
      const warm = 4e6 * (1 - Math.exp(-look)) + warmUpBytes * Math.min(look, 4);
      return { edits, bytes: 2e7 + warm + bytesPerEdit * edits + noiseBytes * (random() - 0.5) };
    });
  };
  test.each([
    ['still memory', looks(0, 0), false],
    ['memory that comes and goes', looks(0, 200_000), false],
    ['memory that is taken at the start and then stands', looks(0, 50_000, 3e6), false],
    ['memory that grows by two kilobytes an edit, in the same noise', looks(2000, 200_000), true],
    ['memory that grows by little more than is allowed', looks(1200, 50_000), true],
  ])('tells %s', (_, seen, grows) => {
    expect(judgeMemory(seen).grows).toBe(grows);
  });
  test('is not led astray by one look in four', () => {
    const seen = looks(0, 20_000).map((look, index) =>
      index === 13 || index === 9 ? { ...look, bytes: 4e7 } : look,
    );
    expect(judgeMemory(seen).grows).toBe(false);
  });
  test('says nothing from too few looks', () => {
    expect(() => judgeMemory(looks(0, 0).slice(0, 8))).toThrow(/at least 5/);
  });
});

const onlyLong = process.env.TEST_DATABASE_URL && !process.env.SOAK_ROUNDS;

describe.skipIf(onlyLong)('a server edited without a rest', () => {
  let folder = '';
  let scratch: ScratchDatabase | undefined;
  let watched: WatchedServer | undefined;
  beforeAll(compileServer);
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fairbend-soak-'));
    scratch = process.env.TEST_DATABASE_URL ? await scratchDatabase() : undefined;
  });
  afterEach(async () => {
    await watched?.end();
    await scratch?.drop();
    rmSync(folder, { recursive: true, force: true });
  });

  async function soak(server: WatchedServer, times: number): Promise<MemoryLook[]> {
    const looks: MemoryLook[] = [];
    for (let round = 1; round <= times; round++) {
      const found = await simulateLoad({
        addresses: [server.address],
        pids: [],
        benches,
        editsEach,
        pauseMs: 0,
      });
      expect(found).toMatchObject({ lost: 0, unheard: 0 });
      looks.push({ edits: round * found.edits, bytes: await server.heldBytes() });
    }
    return looks;
  }

  test('holds no more memory for it; one that kept its requests would be found out', async () => {
    watched = await WatchedServer.start({ dataFolder: folder, databaseUrl: scratch?.address });
    const looks = await soak(watched, rounds);
    const usual = judgeMemory(looks);
    await watched.leak();
    const leaking = judgeMemory(await soak(watched, 5), { ...memoryDefaults, warmUp: 0 });
    const [own, leaked] = [usual, leaking].map(({ bytesPerEdit }) => bytesPerEdit.toFixed(0));
    console.log(
      `    ${own} bytes held an edit over ${looks.at(-1)!.edits} edits; with a leak brought in ${leaked}`,
    );
    expect(usual.grows).toBe(false);
    expect(leaking.grows).toBe(true);
  }, 300_000);
});
