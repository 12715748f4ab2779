import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    pool: 'forks',
    // Files share a process, one after another; each still has its modules to itself.
    isolate: false,
    // Its own usual is one less than the cores: half of a small machine would stand idle.
    maxWorkers: '100%',
    // The compiled program is run as it is, by node itself.
    server: { deps: { external: [/\/dist\//] } },
    globalSetup: ['tests/compiled.ts', 'tests/packages.ts'],
  },
});
