import './scripts/boot/check-node.mjs';
import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/**
 * The server's tests on a PostgreSQL server (TEST_DATABASE_URL): those of PostgreSQL alone, and every other that
 * gets its database from the test kit.
 */
const onAnyDatabase = readdirSync('src/server', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => `src/server/${file.replaceAll('\\', '/')}`)
  .filter((file) => /TEST_DATABASE_URL|kit\/test-app/.test(readFileSync(file, 'utf8')));

export default defineConfig({
  test: {
    include: ['src/server/**/*.pg.test.ts', ...onAnyDatabase],
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
