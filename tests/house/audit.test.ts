import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { judged } from '../../scripts/audit.js'
import { projectRoot } from '../../src/root.ts'
import { scratchFolder } from '../store/scratch.ts'

/** An answer in the form of `npm audit --json` (npm 7 and later: auditReportVersion 2). */
const answer = (...holes: [name: string, severity: string][]) =>
  JSON.stringify({
    auditReportVersion: 2,
    vulnerabilities: Object.fromEntries(
      holes.map(([name, severity]) => [
        name,
        {
          name,
          severity,
          range: '<2.0.0',
          via: [{ title: 'Reads past the end', url: 'https://advisories.example/1' }],
        },
      ]),
    ),
    metadata: { vulnerabilities: {}, dependencies: { prod: 200 } },
  })

describe('Known holes in what is shipped (ASVS 15.2.1)', () => {
  test.each(['high', 'critical'])('fail the tests where one is %s', (severity) => {
    expect(judged(answer(['left', 'low'], ['right', severity]), 1)).toEqual({
      outcome: 'holes',
      says: `right <2.0.0 (${severity}): Reads past the end https://advisories.example/1`,
    })
  })

  test('do not where they are lesser ones, which are counted, or where there are none', () => {
    expect(judged(answer(['left', 'low'], ['right', 'moderate']), 1)).toMatchObject({
      outcome: 'clean',
      says: expect.stringMatching(/2 lesser/),
    })
    expect(judged(answer(), 0)).toMatchObject({ outcome: 'clean', says: expect.not.stringMatching(/lesser/) })
  })

  test('are not known where the registry does not answer, which is said without its address', () => {
    const refused = { message: '405 Method Not Allowed - POST https://mirror.example/audits', statusCode: 405 }
    for (const text of [JSON.stringify(refused), '', '<html>', 'null', '{"error":{"summary":"no network"}}'])
      expect(judged(text, 1)).toMatchObject({
        outcome: 'unknown',
        says: expect.stringMatching(/^The registry told nothing of known holes \((405|no usable answer)\)/),
      })
    expect(judged(JSON.stringify(refused), 1).says).not.toMatch(/mirror/)
    // No holes and a failure all the same is no answer either.
    expect(judged(answer(), 1).outcome).toBe('unknown')
  })

  test('are told by the command’s exit status', () => {
    const file = join(scratchFolder(), 'answer.json')
    const run = (text: string) => {
      writeFileSync(file, text)
      return spawnSync(process.execPath, ['scripts/audit.js', file], { cwd: projectRoot() }).status
    }
    expect([run(answer(['right', 'critical'])), run(answer(['left', 'low'])), run('{}')]).toEqual([1, 0, 0])
  })
})
