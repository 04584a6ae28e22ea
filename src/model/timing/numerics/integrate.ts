import { ModelError } from '../../errors.ts'
import { Ending } from './ending.ts'
import { Step } from './step.ts'
import { Trace } from './trace.ts'

/** More steps than any mechanism here needs; who needs more is stiff beyond sense. */
const mostSteps = 20_000

export interface Motion {
  /** Writes the derivatives of the state into `rates`. No law here changes with time. */
  rates(state: Float64Array, rates: Float64Array): void
  from: ArrayLike<number>
  /** Ends where one of these, evaluated after the start, comes to 0 from below. */
  until: readonly ((state: Float64Array) => number)[]
  /** Ends after this in any case (s). */
  longest: number
  /** Relative error allowed per step. */
  tolerance: number
  /** Size of each number of the state below which its relative error does not matter. */
  scale: readonly number[]
  /** Keep the steps for a drawing. */
  keep?: boolean
}

export interface Arrived {
  seconds: number
  state: Float64Array
  /** Which of `until` ended it; null: the longest time. */
  event: number | null
  trace: Trace
}

/**
 * Solves an initial value problem by an embedded Runge–Kutta method with control of the error, up to the first of several
 * events; the event is found on the last step's curve and the step redone up to there, so that it is as exact as a step.
 *
 * Source: Dormand & Prince, J. Comput. Appl. Math. 6 (1980), 19–26; step control with the error of the step
 * before by Hairer & Wanner, Solving Ordinary Differential Equations II (2nd ed. 1996), section IV.2.
 *
 * @throws ModelError 'overBudget' where more than 20,000 steps would be needed.
 */
export function integrate(motion: Motion): Arrived {
  const step = free.pop() ?? new Step()
  step.use(motion.rates, motion.from.length)
  try {
    return followed(motion, step)
  } finally {
    free.push(step)
  }
}

/** Steps that nobody uses: making their rows of numbers anew for each of fifty motions took as long as a tenth of the motion. */
const free: Step[] = []

function followed(motion: Motion, step: Step): Arrived {
  const { until, longest, tolerance, scale, keep = false } = motion
  const trace = new Trace()
  const state = new Float64Array(motion.from)
  const ending = new Ending(step, until)
  let time = 0
  step.begin(state)
  let size = firstSize(motion, state, step.slope)
  let before = 1e-4
  let refused = false
  for (let count = 0; count < mostSteps; count++) {
    if (keep) trace.add(time, state, step.slope)
    if (time >= longest) return { seconds: time, state, event: null, trace }
    size = Math.min(size, longest - time)
    const off = step.take(state, size) ? step.error(state, size, scale) / tolerance : Number.NaN
    if (!(off <= 1)) {
      size *= Number.isNaN(off) ? 0.1 : Math.max(0.2, 0.9 * off ** -0.17)
      refused = true
      if (size < 1e-14 * (1 + time)) break
      continue
    }
    if (ending.passed()) {
      const first = ending.first({ state, size, width: 1e-3 * tolerance * (time + size) })
      const seconds = time + first.size
      const arrived = step.next.slice()
      if (keep) {
        step.begin(arrived)
        trace.add(seconds, arrived, step.slope)
      }
      return { seconds, state: arrived, event: first.event, trace }
    }
    time += size
    step.goOn(state)
    // With the error before it: where a pressure follows its supply, a step by its own error alone is refused again and again.
    const factor = Math.min(refused ? 1 : 5, off === 0 ? 5 : 0.9 * off ** -0.17 * before ** 0.04)
    before = Math.max(off, 1e-4)
    refused = false
    size *= factor
  }
  throw new ModelError('overBudget', 'This motion changes too quickly to be followed in a reasonable number of steps')
}

/** A step that moves nothing by more than a hundredth of its scale or size. */
function firstSize({ scale, longest }: Motion, state: Float64Array, slope: Float64Array): number {
  let size = longest / 100
  for (let i = 0; i < state.length; i++) {
    const rate = Math.abs(slope[i]!)
    if (rate > 0) size = Math.min(size, (0.01 * Math.max(scale[i]!, Math.abs(state[i]!))) / rate)
  }
  return Math.max(size, 1e-9 * longest)
}
