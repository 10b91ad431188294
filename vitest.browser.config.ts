import { defineConfig } from 'vitest/config';

/** Tests in a real browser, against the built page and a real server; one file after the other. */
export default defineConfig({
  test: {
    include: ['test/browser/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
