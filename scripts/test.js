// @ts-check
// `npm test [-- what vitest takes]`: format and lint, types, then every test; the last line says how many of them passed and failed.
// With --long also those named *.long.test.ts, and what else is kept for it (tests/browser/longForm.ts), which takes minutes.
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { root, run, tool } from './steps.js'

const results = join(root, 'dist', 'test-results.json')

/** @typedef {{ status: string, assertionResults: { status: string }[] }} FileResult */

/** @returns {{ passed: number, failed: number }} */
function count() {
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

/** @param {string} says @param {string} name @param {string[]} args */
function check(says, name, args) {
  console.log(says)
  const { ok, output } = run(tool(name), args)
  if (!ok) console.log(output)
  return ok
}

rmSync(results, { force: true })
const asked = process.argv.slice(2).filter((word) => word !== '--long')
if (process.argv.includes('--long')) process.env.LONG_TESTS = '1'
const checks = [
  check('Checking format and lint (about 2 s)', 'biome', ['check', '--colors=off', '--max-diagnostics=50']),
  check('Checking types (about 5 s)', 'tsc', ['--noEmit']),
]
console.log('Running the tests (some minutes; those in a browser come last)')
const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${results}`]
const { ok } = run(tool('vitest'), ['run', ...reporters, ...asked], { shown: true })
const tests = count()
const passed = tests.passed + checks.filter((good) => good).length
const failed = tests.failed + checks.filter((good) => !good).length + (ok || tests.failed > 0 ? 0 : 1)
console.log(`${passed} passed, ${failed} failed`)
process.exitCode = failed === 0 ? 0 : 1
