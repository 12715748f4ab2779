import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    pool: 'forks',
    globalSetup: ['tests/compiled.ts', 'tests/browser-setup.ts'],
  },
});
