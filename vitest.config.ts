import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'
import { serverPrograms } from './scripts/postgresql.js'

/** What is tested on PostgreSQL each time, where it is installed; `npm run test:postgres` takes the whole store and the whole API. */
const onPostgresql =
  process.env.DATABASE_TEST === 'postgresql'
    ? ['tests/store/**/*.test.ts', 'tests/api/**/*.test.ts', 'tests/postgresql/**/*.test.ts']
    : ['tests/store/{documents,writers,intake,recordLog,event,forecasts}.test.ts', 'tests/postgresql/**/*.test.ts']

/** What is about files of SQLite. */
const onlySqlite = ['tests/store/{crash,migration,settings,transaction}.test.ts', 'tests/store/backups/**']

const postgresql: TestProjectInlineConfiguration = {
  extends: true,
  test: {
    name: 'postgresql',
    include: onPostgresql,
    exclude: onlySqlite,
    env: { DATABASE_TEST: 'postgresql' },
    // A process more is waited for as long as a slow machine takes.
    testTimeout: 180_000,
    expect: { poll: { timeout: 20_000, interval: 10 } },
    sequence: { groupOrder: 0 },
  },
}

/** Browser tests run last and two files at a time: each waits half of its time for pages and computations. */
export default defineConfig({
  test: {
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // One less than the cores would leave half of a small machine idle.
    maxWorkers: '100%',
    // A third of the time went into loading the same modules for each file. What a file changes beyond itself, it puts back.
    isolate: false,
    projects: [
      ...(serverPrograms() === null ? [] : [postgresql]),
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/faults/phone/**', 'tests/postgresql/**'],
          setupFiles: ['tests/web/setup.ts'],
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts', 'tests/faults/phone/**/*.test.ts'],
          exclude: process.env.LONG_TESTS ? [] : ['**/*.long.test.ts'],
          globalSetup: ['tests/browser/build.ts'],
          maxWorkers: 2,
          testTimeout: 180_000,
          // A screen gets there a moment after the press; a slow machine takes its time.
          expect: { poll: { timeout: 20_000, interval: 40 } },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
