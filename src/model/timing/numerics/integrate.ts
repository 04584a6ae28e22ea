import { ModelError } from '../../errors.ts'
import { Trace } from './trace.ts'

/** Coefficients of Dormand and Prince: a step of fifth order, and the difference to one of fourth as its error. */
const node = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1]
const stage = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
]
const error = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40]

/** More steps than any mechanism here needs; who needs more is stiff beyond sense. */
const mostSteps = 20_000

export interface Motion {
  /** Writes the derivatives of the state into `rates`. */
  rates(state: Float64Array, rates: Float64Array, time: number): void
  from: readonly number[]
  /** Ends where one of these, evaluated after the start, comes to 0 from below. */
  until: readonly ((state: Float64Array, time: number) => number)[]
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
 * events; the event is found by redoing the last step shorter, so that it is as exact as a step.
 *
 * Source: Dormand & Prince, J. Comput. Appl. Math. 6 (1980), 19–26; step control by Hairer, Nørsett & Wanner, Solving
 * Ordinary Differential Equations I (2nd ed. 1993), section II.4.
 *
 * @throws ModelError 'overBudget' where more than 20,000 steps would be needed.
 */
export function integrate(motion: Motion): Arrived {
  const { until, longest, tolerance, scale } = motion
  const stepper = new Stepper(motion)
  const trace = new Trace()
  const state = Float64Array.from(motion.from)
  let time = 0
  let step = stepper.firstStep(state, longest)
  for (let count = 0; count < mostSteps; count++) {
    if (motion.keep) trace.add(time, state, stepper.slopes[0]!)
    if (time >= longest) return { seconds: time, state, event: null, trace }
    step = Math.min(step, longest - time)
    const off = stepper.take(state, time, step, tolerance, scale)
    if (off > 1 || Number.isNaN(off)) {
      step *= Number.isNaN(off) ? 0.1 : Math.max(0.2, 0.9 * off ** -0.2)
      if (step < 1e-14 * (1 + time)) break
      continue
    }
    const event = until.findIndex((value) => value(stepper.next, time + step) >= 0)
    if (event >= 0) {
      const first = stepper.firstEvent(state, time, step)
      const arrived = time + first.step
      if (motion.keep) {
        stepper.begin(stepper.next, arrived)
        trace.add(arrived, stepper.next, stepper.slopes[0]!)
      }
      return { seconds: arrived, state: stepper.next.slice(), event: first.event, trace }
    }
    time += step
    state.set(stepper.next)
    stepper.goOn()
    step *= Math.min(5, off === 0 ? 5 : 0.9 * off ** -0.2)
  }
  throw new ModelError('overBudget', 'This motion changes too quickly to be followed in a reasonable number of steps')
}

class Stepper {
  readonly next: Float64Array
  readonly slopes: Float64Array[]
  private readonly between: Float64Array
  private readonly motion: Motion

  constructor(motion: Motion) {
    this.motion = motion
    const size = motion.from.length
    this.next = new Float64Array(size)
    this.between = new Float64Array(size)
    this.slopes = Array.from({ length: 7 }, () => new Float64Array(size))
  }

  /** A step that moves nothing by more than a hundredth of its scale or size. */
  firstStep(state: Float64Array, longest: number): number {
    this.begin(state, 0)
    const { scale } = this.motion
    let step = longest / 100
    for (let i = 0; i < state.length; i++) {
      const rate = Math.abs(this.slopes[0]![i]!)
      if (rate > 0) step = Math.min(step, (0.01 * Math.max(scale[i]!, Math.abs(state[i]!))) / rate)
    }
    return Math.max(step, 1e-9 * longest)
  }

  /** The last slope of a step is the first one of the next. */
  goOn(): void {
    this.slopes[0]!.set(this.slopes[6]!)
  }

  begin(state: Float64Array, time: number): void {
    this.motion.rates(state, this.slopes[0]!, time)
  }

  /** Takes a step into `next`; its error in units of what is allowed. Uses the slopes of `begin`. */
  take(state: Float64Array, time: number, step: number, tolerance: number, scale: readonly number[]): number {
    const { slopes, between, next } = this
    for (let s = 1; s < 7; s++) {
      const weights = stage[s]!
      const target = s === 6 ? next : between
      for (let i = 0; i < state.length; i++) {
        let sum = 0
        for (let j = 0; j < s; j++) sum += weights[j]! * slopes[j]![i]!
        target[i] = state[i]! + step * sum
      }
      this.motion.rates(target, slopes[s]!, time + node[s]! * step)
    }
    let worst = 0
    for (let i = 0; i < state.length; i++) {
      let sum = 0
      for (let j = 0; j < 7; j++) sum += error[j]! * slopes[j]![i]!
      const size = scale[i]! + Math.max(Math.abs(state[i]!), Math.abs(next[i]!))
      worst = Math.max(worst, Math.abs(step * sum) / (tolerance * size))
      if (Number.isNaN(sum)) return Number.NaN
    }
    return worst
  }

  /** The shortest step after which an event has come to 0, by false position (Illinois) on steps from the same state. */
  firstEvent(state: Float64Array, time: number, whole: number): { step: number; event: number } {
    let best = { step: whole, event: -1 }
    for (const [event, value] of this.motion.until.entries()) {
      this.shorten(state, time, best.step)
      if (value(this.next, time + best.step) < 0) continue
      best = { step: this.root(state, time, best.step, value), event }
    }
    this.shorten(state, time, best.step)
    return best
  }

  private shorten(state: Float64Array, time: number, step: number): void {
    this.take(state, time, step, 1, this.motion.scale)
  }

  private root(state: Float64Array, time: number, whole: number, value: Motion['until'][number]): number {
    let [low, high] = [0, whole]
    let atLow = value(state, time)
    this.shorten(state, time, high)
    let atHigh = value(this.next, time + high)
    // At the very start a value may be 0 and fall first: then the step as a whole is the bracket, halved.
    if (atLow >= 0) atLow = Number.NEGATIVE_INFINITY
    for (let turn = 0; turn < 60 && high - low > 1e-13 * (1 + time); turn++) {
      const secant = low + ((high - low) * -atLow) / (atHigh - atLow)
      const middle = Number.isFinite(secant) && secant > low && secant < high ? secant : (low + high) / 2
      this.shorten(state, time, middle)
      const at = value(this.next, time + middle)
      if (at === 0) return middle
      if (at > 0) {
        ;[high, atHigh] = [middle, at]
        atLow /= 2
      } else {
        ;[low, atLow] = [middle, at]
        atHigh /= 2
      }
    }
    return high
  }
}
