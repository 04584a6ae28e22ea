import { defineConfig } from 'vitest/config'

/** Browser tests run last and one file at a time, so that their timings are not those of a busy machine. */
export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // One less than the cores would leave half of a small machine idle.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          setupFiles: ['tests/web/setup.ts'],
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
