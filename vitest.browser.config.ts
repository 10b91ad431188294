import './scripts/boot/check-node.mjs';
import { defineConfig } from 'vitest/config';

/**
 * Tests in a real browser, against the built page and a real server, two files at a time. A process keeps what it
 * loaded and its Chromium from one file to the next; servers and browser profiles are every file's own.
 */
export default defineConfig({
  test: {
    include: ['test/browser/**/*.test.ts'],
    pool: 'forks',
    isolate: false,
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 20_000 } },
  },
});
