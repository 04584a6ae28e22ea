import { spawnSync } from 'node:child_process'
import { constants } from 'node:os'
import { expect, test } from 'vitest'
import { projectRoot } from '../../../src/root.ts'

test.runIf(process.platform === 'linux')('whoever makes a copy lets all others go first', () => {
  // In a process of its own: who has given way does not get back in front.
  const program = `
    import { getPriority } from 'node:os'
    import { giveWay } from './src/store/backups/giveWay.ts'
    giveWay()
    console.log(getPriority(process.pid))`
  const args = ['--import', 'tsx', '--input-type=module', '-e', program]
  const { stdout } = spawnSync(process.execPath, args, { cwd: projectRoot(), encoding: 'utf8' })
  expect(Number(stdout)).toBe(constants.priority.PRIORITY_LOW)
})
