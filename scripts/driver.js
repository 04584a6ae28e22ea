// @ts-check
// The database driver is compiled where its ready-made form can not be downloaded: one long C file, on one core.
import { run, runLong } from './steps.js'

export function driverWorks() {
  return run(process.execPath, ['-e', "new (require('better-sqlite3'))(':memory:').close()"]).ok
}

function whyNot() {
  const missing = ['python3', 'make', 'g++'].filter((name) => !run(name, ['--version']).ok)
  return missing.length === 0
    ? 'The database driver better-sqlite3 could neither be downloaded nor compiled; what npm says stands above.'
    : `The database driver better-sqlite3 could not be downloaded ready-made, and to compile it ${missing.join(', ')} must be ` +
        'installed (on Debian: apt-get install python3 make g++). Then run the command again.'
}

/**
 * Makes the driver ready where it is not; anything else may go on meanwhile.
 * @returns {Promise<string | undefined>} what went wrong
 */
export async function makeDriver() {
  if (driverWorks()) return undefined
  console.log('Making the database driver ready (some seconds; 1 to 2 minutes where it is compiled)')
  // The level that SQLite itself is built with: a quarter less compiling than the package's own.
  const { CFLAGS = '-O2', CXXFLAGS = '-O2', JOBS = 'max' } = process.env
  const { ok, output } = await runLong('npm', ['rebuild', 'better-sqlite3'], { env: { CFLAGS, CXXFLAGS, JOBS } })
  if (!ok || !driverWorks()) return `${output.trim()}\n\n${whyNot()}`.trim()
  console.log('The database driver is ready')
  return undefined
}
