// @ts-check
// `npm test [-- what vitest takes]`: format and lint, types, then every test; the last line says how many of them passed and failed.
// With --long also those named *.long.test.ts, and what else is kept for it (tests/browser/longForm.ts), which takes minutes.
// Known serious holes of dependencies fail it too, where the registry tells of them.
// With --postgres the store and the API on PostgreSQL alone, as a whole; otherwise a short part of it, where it is installed.
// Where the database driver must be compiled first, on one core, the other does what needs no database.
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { audit } from './audit.js'
import { driverWorks, makeDriver } from './driver.js'
import { serverPrograms } from './postgresql.js'
import { root, runLong, tool } from './steps.js'

/** What needs no database: a compiling driver does not hold it up. The rest is everything else in the folder. */
const pure = ['tests/model', 'tests/theory']
const others = () =>
  readdirSync(join(root, 'tests'))
    .map((name) => `tests/${name}`)
    .filter((path) => !pure.includes(path))

/** @typedef {{ status: string, assertionResults: { status: string }[] }} FileResult */

/** @param {string} results @returns {{ passed: number, failed: number }} */
function count(results) {
  if (!existsSync(results)) return { passed: 0, failed: 1 }
  /** @type {{ testResults: FileResult[] }} */
  const { testResults } = JSON.parse(readFileSync(results, 'utf8'))
  const of = (/** @type {string} */ status) =>
    testResults.flatMap((file) => file.assertionResults).filter((test) => test.status === status).length
  // A file that breaks while it loads has no test that could fail.
  const broken = testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed'),
  ).length
  return { passed: of('passed'), failed: of('failed') + broken }
}

const total = { passed: 0, failed: 0 }

/** @param {string} says @param {string} name @param {string[]} args */
async function check(says, name, args) {
  console.log(says)
  const { ok, output } = await runLong(tool(name), args)
  if (!ok) console.log(output)
  total[ok ? 'passed' : 'failed']++
}

/** @param {string} says @param {string[]} args What Vitest takes. */
async function tests(says, args) {
  console.log(says)
  const results = join(root, 'dist', 'test-results.json')
  rmSync(results, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${results}`]
  const { ok } = await runLong(tool('vitest'), ['run', ...reporters, ...args], { shown: true })
  const { passed, failed } = count(results)
  total.passed += passed
  total.failed += failed + (ok || failed > 0 ? 0 : 1)
}

const asked = process.argv.slice(2).filter((word) => word !== '--long' && word !== '--postgres')
if (process.argv.includes('--long')) process.env.LONG_TESTS = '1'
const onPostgresql = process.argv.includes('--postgres')
if (onPostgresql) {
  process.env.DATABASE_TEST = 'postgresql'
  asked.unshift('--project', 'postgresql')
}
if (serverPrograms() === null) {
  console.log('PostgreSQL is not installed here (apt-get install postgresql), so nothing is tested on it')
  if (onPostgresql) total.failed++
}
const early = asked.length === 0 && !driverWorks()
const driver = makeDriver()
// Meanwhile; a part that is asked for by name has nothing to do with it.
const holes = asked.length === 0 ? audit() : undefined
await check('Checking format and lint (about 2 s)', 'biome', ['check', '--colors=off', '--max-diagnostics=50'])
await check('Checking types (about 5 s)', 'tsc', ['--noEmit'])
if (early) await tests('Running the tests that need no database meanwhile (1 to 2 minutes)', pure)
const broken = await driver
if (broken === undefined)
  await tests('Running the tests (some minutes; those in a browser come last)', early ? others() : asked)
else {
  console.log(broken)
  total.failed++
}
if (holes) {
  const { outcome, says } = await holes
  console.log(says)
  if (outcome !== 'unknown') total[outcome === 'clean' ? 'passed' : 'failed']++
}
console.log(`${total.passed} passed, ${total.failed} failed`)
process.exitCode = total.failed === 0 ? 0 : 1
