// @ts-check
// Known holes in what is shipped, as the registry knows them: those that are high or critical fail the tests. Where the registry does not answer, as
// behind a mirror, that is said and fails nothing. `node scripts/audit.js answer.json` reads an answer of `npm audit --json` from a file.
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { root } from './steps.js'

const serious = ['high', 'critical']

/** @typedef {{ outcome: 'clean' | 'holes' | 'unknown', says: string }} Audit */
/** @typedef {{ name: string, severity: string, range?: string, via?: (string | { title?: string, url?: string })[] }} Hole */

/**
 * What an answer of `npm audit --json` says. Its exit status alone tells too little: 1 is also what a registry brings about that does not answer.
 * @param {string} answer @param {number | null} status @returns {Audit}
 */
export function judged(answer, status) {
  /** @type {{ vulnerabilities?: Record<string, Hole>, metadata?: { dependencies?: { total?: number } }, message?: string, error?: { summary?: string } }} */
  let told
  try {
    told = JSON.parse(answer)
  } catch {
    return unknown('no answer that could be read')
  }
  if (told === null || typeof told.vulnerabilities !== 'object' || told.vulnerabilities === null)
    return unknown(told?.message ?? told?.error?.summary ?? 'another answer than it should')
  const holes = Object.values(told.vulnerabilities).filter(({ severity }) => serious.includes(severity))
  if (holes.length > 0) return { outcome: 'holes', says: holes.map(line).join('\n') }
  if (status !== 0 && Object.keys(told.vulnerabilities).length === 0) return unknown(`a failure (${status})`)
  const lesser = Object.keys(told.vulnerabilities).length
  return {
    outcome: 'clean',
    says: `The registry knows of no serious hole in what is shipped${lesser > 0 ? `, and of ${lesser} lesser ones: npm audit` : ''}`,
  }
}

/** @param {string} why @returns {Audit} */
const unknown = (why) => ({
  outcome: 'unknown',
  // Its first line, and no address: that of a mirror is nobody's business.
  says: `The registry told nothing of known holes (${/\b40\d\b|\b50\d\b/.exec(why)?.[0] ?? 'no usable answer'}), so nothing is known of them`,
})

/** @param {Hole} hole */
function line({ name, severity, range = '', via = [] }) {
  const why = via.map((each) =>
    typeof each === 'string' ? `by ${each}` : `${each.title ?? ''} ${each.url ?? ''}`.trim(),
  )
  return `${name} ${range} (${severity}): ${why.join('; ')}`
}

/** Asks the registry; at most half a minute. @returns {Promise<Audit>} */
export function audit() {
  const args = ['audit', '--json', '--omit=dev', '--fetch-retries=0', '--fetch-timeout=15000', '--loglevel=silent']
  return new Promise((resolve) => {
    const child = spawn('npm', args, { cwd: root, stdio: ['ignore', 'pipe', 'ignore'], timeout: 30_000 })
    let answer = ''
    child.stdout.on('data', (chunk) => {
      answer += chunk
    })
    child.once('error', () => resolve(unknown('')))
    child.once('close', (status) => resolve(judged(answer, status)))
  })
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const file = process.argv[2]
  const { outcome, says } = file === undefined ? await audit() : judged(readFileSync(file, 'utf8'), 0)
  console.log(says)
  process.exitCode = outcome === 'holes' ? 1 : 0
}
