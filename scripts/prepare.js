// @ts-check
// Runs before `npm start`, `npm test` and their like, on a clone that may hold nothing but its files. So it imports no package.
import { makeDriver } from './driver.js'
import { dependenciesAreCurrent, fingerprint, isStale, leaveStamp, made, run, runLong } from './steps.js'

/** @param {string} sentence @param {string} output @returns {never} */
function stop(sentence, output) {
  if (output.trim() !== '') console.error(output.trim())
  console.error(`\n${sentence}`)
  process.exit(1)
}

async function install() {
  if (!dependenciesAreCurrent()) {
    console.log('Installing dependencies from the npm registry (about 1 minute)')
    // No package may run anything of its own: one would download an engine that is not used. The driver's turn is next.
    const { ok, output } = await runLong('npm', ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund'])
    if (!ok) stop('The dependencies could not be installed. Is the npm registry reachable?', output)
  }
}

/** @param {(typeof made)['web']} step */
function make(step) {
  if (!isStale(step)) return
  console.log(step.says)
  const print = fingerprint(step.inputs)
  const [command = '', ...args] = step.command
  const { ok, output } = run(command, args)
  if (!ok) stop(`This step failed: ${step.says.replace(/ \(.*/, '')}.`, output)
  leaveStamp(step.name, print)
}

// Before tests the driver is left to scripts/test.js, which does what needs no database while it is compiled.
const driverLater = process.argv.includes('--driver-later')
const wanted = process.argv.slice(2).filter((word) => word !== '--driver-later')
await install()
const broken = driverLater ? undefined : await makeDriver()
if (broken !== undefined) stop(broken, '')
for (const step of Object.values(made))
  if (wanted.length === 0 || wanted.some((name) => step.name.startsWith(name))) make(step)
