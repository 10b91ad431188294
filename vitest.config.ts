import './scripts/boot/check-node.mjs';
import { defineConfig } from 'vitest/config';

const patient = { testTimeout: 60_000, hookTimeout: 60_000 };
const elsewhere = ['test/browser/**', '**/*.pg.test.ts', 'node_modules/**', 'dist/**'];
/** No state, no clock, no chance of their own: a process keeps what it loaded from one file to the next. */
const pure = ['door', 'engine', 'image', 'paper', 'record', 'sheets', 'words'].map(
  (part) => `src/${part}/**/*.test.ts`,
);

export default defineConfig({
  test: {
    // By default one core stays idle: of two, half the machine.
    maxWorkers: '100%',
    projects: [
      { test: { ...patient, name: 'pure', include: pure, exclude: elsewhere, isolate: false } },
      {
        test: {
          ...patient,
          name: 'with state',
          include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'test/**/*.test.ts'],
          exclude: [...elsewhere, ...pure],
        },
      },
    ],
  },
});
