import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    // All processors: the tests wait for nothing but them.
    maxWorkers: '100%',
    passWithNoTests: false,
    env: { CLINIC_RULEBOOK_CACHE: 'off' },
  },
});
