import { existsSync, writeFileSync } from 'node:fs'
import { register } from 'tsx/esm/api'

register()

const worker = await import('../../src/api/compute/compute.worker.ts')

export const { compare, draws, summary, candidates, lineups } = worker

/** Ends its thread in the middle of a task, so often as the folder named by the environment says. */
export const matches = (asked) => {
  const answer = worker.matches(asked)
  const folder = process.env.DYING_THREADS
  for (let death = 1; asked.from > 0 && death <= Number(process.env.DYING_TIMES); death++) {
    const mark = `${folder}/${death}`
    if (existsSync(mark)) continue
    writeFileSync(mark, '')
    process.exit(7)
  }
  return answer
}
