import { sweep, timing } from '../../src/model/timing/index.ts'
import { examples, motorPivotInput } from '../model/timing/inputs.ts'
import { type BenchEntry, milliseconds } from './entry.ts'
import { openTimingPage } from './timingPage.ts'

const reductions = { low: 20, high: 400, count: 100 }

/** So many times one calculator is asked for one measurement, because the clock is coarse. */
const turns = 20

const entries: BenchEntry[] = [
  {
    // The slowest of those that can be searched: an arm against gravity, followed in time.
    name: 'timing.sweep',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: () => {
      const run = () => sweep({ calculator: 'pivot', input: motorPivotInput, reductions, motors: [1, 2] })
      if (run().points.length !== 200) throw new Error('the sweep is not of 200 points')
      return { run: () => milliseconds(run) }
    },
  },
  {
    // The slowest of all examples, everything included: curves, sensitivities and draws.
    name: 'timing.each',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: () => {
      const once = ([name, input]: (typeof examples)[number]) => timing(name, input)
      for (let turn = 0; turn < turns; turn++) examples.forEach(once)
      return {
        run: async () => {
          const each = []
          for (const example of examples) {
            const all = await milliseconds(() => {
              for (let turn = 0; turn < turns; turn++) once(example)
            })
            each.push(all / turns)
          }
          return Math.max(...each)
        },
      }
    },
  },
  {
    // The same in a real browser.
    name: 'timing.web',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: async () => {
      const page = await openTimingPage()
      await page.each(turns)
      return { run: async () => (await page.each(turns)).milliseconds, close: page.close }
    },
  },
  {
    name: 'timing.websweep',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: async () => {
      const page = await openTimingPage()
      await page.sweep()
      return { run: page.sweep, close: page.close }
    },
  },
]

export default entries
