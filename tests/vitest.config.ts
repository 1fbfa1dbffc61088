import { defineConfig } from 'vitest/config';

const times = { testTimeout: 30_000, hookTimeout: 30_000 };

export default defineConfig({
  test: {
    // Many tests wait for a terminal, a port or a program: more of them than processors run at once.
    maxWorkers: 4,
    projects: [
      {
        // The core is pure: its tests share one load of the modules, which saves more time than they take themselves.
        test: { ...times, name: 'core', include: ['tests/core/**/*.test.{ts,tsx}'], isolate: false },
      },
      {
        test: {
          ...times,
          name: 'whole',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/core/**'],
        },
      },
    ],
  },
});
