import './scripts/boot/check-node.mjs';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'test/**/*.test.ts'],
    exclude: ['test/browser/**', '**/*.pg.test.ts', 'node_modules/**', 'dist/**'],
    // By default one core stays idle: of two, half the machine.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
