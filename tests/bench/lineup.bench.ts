import { lineupInParts } from '../../src/api/compute/lineupInParts.ts'
import { openPool } from '../../src/api/compute/pool.ts'
import { type BenchEntry, milliseconds } from './entry.ts'
import { search } from './lineup.ts'

/** A search as the server answers it with two threads: the closed form, all plans, and 80,000 matches. */
const lineupSearch: BenchEntry = {
  name: 'lineup.search',
  unit: 'ms',
  better: 'lower',
  open: async () => {
    const pool = openPool({ threads: 2 })
    const { signal } = new AbortController()
    // Another seed each time: the threads keep the plans of the last request only.
    let seed = 1
    const run = () => milliseconds(() => lineupInParts(pool, search(seed++), { signal }))
    await run()
    return { run, close: () => pool.close() }
  },
}

export default [lineupSearch]
