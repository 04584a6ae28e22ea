import type { Motion } from './integrate.ts'
import type { Step } from './step.ts'

interface From {
  state: Float64Array
  size: number
  /** How exactly the end is wanted (s). */
  width: number
}

/**
 * Finds where in a step the first of the events comes. The step's own curve says where about without another derivative; the
 * step is redone up to there, and what is then left to the event is far below a step and taken in a straight line.
 */
export class Ending {
  private readonly step: Step
  private readonly until: Motion['until']

  constructor(step: Step, until: Motion['until']) {
    this.step = step
    this.until = until
  }

  passed(): boolean {
    for (const value of this.until) if (value(this.step.next) >= 0) return true
    return false
  }

  /** The shortest step after which an event has come to 0; `next` of the step is the state then. */
  first(from: From): { size: number; event: number } {
    let first = { share: Number.POSITIVE_INFINITY, event: -1 }
    for (const [event, value] of this.until.entries()) {
      if (value(this.step.next) < 0) continue
      const share = this.shareOf(value, from)
      if (share < first.share) first = { share, event }
    }
    const { event, share } = first
    return { size: this.settled(this.until[event]!, from, share * from.size), event }
  }

  /** Of the step, by false position (Illinois) on its curve; the end of the bracket that lies after the event. */
  private shareOf(value: Motion['until'][number], { state, size }: From): number {
    const { step } = this
    const { between } = step
    let [low, high] = [0, 1]
    let [atLow, atHigh] = [value(state), value(step.next)]
    // At the very start a value may be 0 and fall first: then the step as a whole is the bracket, halved.
    if (atLow >= 0) atLow = Number.NEGATIVE_INFINITY
    let kept: 'low' | 'high' | null = null
    for (let turn = 0; turn < 60 && high - low > 1e-9; turn++) {
      const secant = low + ((high - low) * -atLow) / (atHigh - atLow)
      const middle = secant > low && secant < high ? secant : (low + high) / 2
      step.within(state, size, middle, between)
      const there = value(between)
      if (Math.abs(there) < 1e-9 * Math.abs(atHigh - atLow)) return middle
      // An end that is kept twice counts half, or it would be kept for good.
      if (there > 0) {
        ;[high, atHigh] = [middle, there]
        if (kept === 'low') atLow /= 2
        kept = 'low'
      } else {
        ;[low, atLow] = [middle, there]
        if (kept === 'high') atHigh /= 2
        kept = 'high'
      }
    }
    return high
  }

  /** Steps from the same state up to about the event, each mended by the slope at its end, until what is mended is nothing. */
  private settled(value: Motion['until'][number], { state, size, width }: From, about: number): number {
    const { step } = this
    const { between } = step
    let [low, high] = [0, size]
    let at = about
    for (let turn = 0; turn < 60; turn++) {
      step.take(state, at)
      const there = value(step.next)
      if (there === 0 || high - low <= width) return at
      if (there > 0) high = at
      else low = at
      const ahead = 1e-6 * size
      step.onward(ahead, between)
      const move = (-there * ahead) / (value(between) - there)
      // The error of a straight line is its length squared: where that is nothing beside the step, no further step is needed.
      if (Math.abs(move) <= width || move * move <= width * size) {
        step.onward(move, step.next)
        return at + move
      }
      at = at + move > low && at + move < high ? at + move : (low + high) / 2
    }
    return at
  }
}
