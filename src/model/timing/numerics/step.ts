type Rates = (state: Float64Array, rates: Float64Array, time: number) => void

/**
 * One step of the method of Dormand and Prince: of fifth order, with the difference to one of fourth as its error. Written out,
 * because a mechanism takes thousands of them.
 */
export class Step {
  readonly next: Float64Array
  private readonly rates: Rates
  private readonly between: Float64Array
  private k1: Float64Array
  private k7: Float64Array
  private readonly k2: Float64Array
  private readonly k3: Float64Array
  private readonly k4: Float64Array
  private readonly k5: Float64Array
  private readonly k6: Float64Array

  constructor(rates: Rates, count: number) {
    this.rates = rates
    const numbers = () => new Float64Array(count)
    ;[this.next, this.between] = [numbers(), numbers()]
    ;[this.k1, this.k2, this.k3, this.k4] = [numbers(), numbers(), numbers(), numbers()]
    ;[this.k5, this.k6, this.k7] = [numbers(), numbers(), numbers()]
  }

  /** Derivatives where the step begins. */
  get slope(): Float64Array {
    return this.k1
  }

  begin(state: Float64Array, time: number): void {
    this.rates(state, this.k1, time)
  }

  /** Makes `next` the state; the last slope of a step is the first one of the next. */
  goOn(state: Float64Array): void {
    for (let i = 0; i < state.length; i++) state[i] = this.next[i]!
    ;[this.k1, this.k7] = [this.k7, this.k1]
  }

  /** Takes a step into `next`; whether all of it are numbers. */
  take(state: Float64Array, time: number, h: number): boolean {
    const { rates, between: y, next, k1, k2, k3, k4, k5, k6, k7 } = this
    const count = state.length
    for (let i = 0; i < count; i++) y[i] = state[i]! + (h / 5) * k1[i]!
    rates(y, k2, time + h / 5)
    for (let i = 0; i < count; i++) y[i] = state[i]! + h * ((3 / 40) * k1[i]! + (9 / 40) * k2[i]!)
    rates(y, k3, time + 0.3 * h)
    for (let i = 0; i < count; i++) {
      y[i] = state[i]! + h * ((44 / 45) * k1[i]! - (56 / 15) * k2[i]! + (32 / 9) * k3[i]!)
    }
    rates(y, k4, time + 0.8 * h)
    for (let i = 0; i < count; i++) {
      const sum = (19372 / 6561) * k1[i]! - (25360 / 2187) * k2[i]! + (64448 / 6561) * k3[i]! - (212 / 729) * k4[i]!
      y[i] = state[i]! + h * sum
    }
    rates(y, k5, time + (8 / 9) * h)
    for (let i = 0; i < count; i++) {
      const sum = (9017 / 3168) * k1[i]! - (355 / 33) * k2[i]! + (46732 / 5247) * k3[i]!
      y[i] = state[i]! + h * (sum + (49 / 176) * k4[i]! - (5103 / 18656) * k5[i]!)
    }
    rates(y, k6, time + h)
    for (let i = 0; i < count; i++) {
      const sum = (35 / 384) * k1[i]! + (500 / 1113) * k3[i]! + (125 / 192) * k4[i]!
      next[i] = state[i]! + h * (sum - (2187 / 6784) * k5[i]! + (11 / 84) * k6[i]!)
    }
    rates(next, k7, time + h)
    for (let i = 0; i < count; i++) if (Number.isNaN(k7[i]!)) return false
    return true
  }

  /** Error of the step just taken: the greatest, each relative to its number's size and at least its scale. */
  error(state: Float64Array, h: number, scale: readonly number[]): number {
    const { next, k1, k3, k4, k5, k6, k7 } = this
    let worst = 0
    for (let i = 0; i < state.length; i++) {
      const early = (71 / 57600) * k1[i]! - (71 / 16695) * k3[i]! + (71 / 1920) * k4[i]!
      const late = (22 / 525) * k6[i]! - (17253 / 339200) * k5[i]! - (1 / 40) * k7[i]!
      const size = scale[i]! + Math.max(Math.abs(state[i]!), Math.abs(next[i]!))
      worst = Math.max(worst, Math.abs(h * (early + late)) / size)
    }
    return worst
  }
}
