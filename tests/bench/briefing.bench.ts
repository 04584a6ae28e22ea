import { briefInParts } from '../../src/api/compute/briefInParts.ts'
import { openPool } from '../../src/api/compute/pool.ts'
import { robotsOfDemo } from './briefingEvent.ts'
import { type BenchEntry, milliseconds } from './entry.ts'

/** A briefing as the server answers it with two threads, from stored estimates: line-ups, calls, threat, facts, and what is drawn. */
const cold: BenchEntry = {
  name: 'briefing.cold',
  unit: 'ms',
  better: 'lower',
  open: async () => {
    const pool = openPool({ threads: 2 })
    const { signal } = new AbortController()
    const request = robotsOfDemo()
    // Another seed each time: the threads keep the robots of the last request only.
    let seed = 1
    const run = () => milliseconds(() => briefInParts(pool, { ...request, seed: seed++ }, { signal }))
    await run()
    return { run, close: () => pool.close() }
  },
}

export default [cold]
