import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/seed.ts'],
    testTimeout: 60_000,
    // By default one core is left idle, which is half of a small machine.
    maxWorkers: '100%',
  },
});
