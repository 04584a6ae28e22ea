const none = new Float64Array(0)

type Rates = (state: Float64Array, rates: Float64Array) => void

/**
 * One step of the method of Dormand and Prince: of fifth order, with the difference to one of fourth as its error. Written out,
 * because a mechanism takes thousands of them.
 */
export class Step {
  next = none
  /** Room for a state between; a step taken leaves nothing in it. */
  between = none
  private rates: Rates = () => {}
  private count = 0
  private k1 = none
  private k7 = none
  private k2 = none
  private k3 = none
  private k4 = none
  private k5 = none
  private k6 = none

  /** Begins with another motion, of so many numbers. */
  use(rates: Rates, count: number): void {
    this.rates = rates
    if (count === this.count) return
    this.count = count
    const numbers = () => new Float64Array(count)
    ;[this.next, this.between] = [numbers(), numbers()]
    ;[this.k1, this.k2, this.k3, this.k4] = [numbers(), numbers(), numbers(), numbers()]
    ;[this.k5, this.k6, this.k7] = [numbers(), numbers(), numbers()]
  }

  /** Derivatives where the step begins. */
  get slope(): Float64Array {
    return this.k1
  }

  begin(state: Float64Array): void {
    this.rates(state, this.k1)
  }

  /** Makes `next` the state; the last slope of a step is the first one of the next. */
  goOn(state: Float64Array): void {
    for (let i = 0; i < state.length; i++) state[i] = this.next[i]!
    ;[this.k1, this.k7] = [this.k7, this.k1]
  }

  /** Takes a step into `next`; whether all of it are numbers. */
  take(state: Float64Array, h: number): boolean {
    const { rates, between: y, next, k1, k2, k3, k4, k5, k6, k7 } = this
    const count = state.length
    for (let i = 0; i < count; i++) y[i] = state[i]! + (h / 5) * k1[i]!
    rates(y, k2)
    for (let i = 0; i < count; i++) y[i] = state[i]! + h * ((3 / 40) * k1[i]! + (9 / 40) * k2[i]!)
    rates(y, k3)
    for (let i = 0; i < count; i++) {
      y[i] = state[i]! + h * ((44 / 45) * k1[i]! - (56 / 15) * k2[i]! + (32 / 9) * k3[i]!)
    }
    rates(y, k4)
    for (let i = 0; i < count; i++) {
      const sum = (19372 / 6561) * k1[i]! - (25360 / 2187) * k2[i]! + (64448 / 6561) * k3[i]! - (212 / 729) * k4[i]!
      y[i] = state[i]! + h * sum
    }
    rates(y, k5)
    for (let i = 0; i < count; i++) {
      const sum = (9017 / 3168) * k1[i]! - (355 / 33) * k2[i]! + (46732 / 5247) * k3[i]!
      y[i] = state[i]! + h * (sum + (49 / 176) * k4[i]! - (5103 / 18656) * k5[i]!)
    }
    rates(y, k6)
    for (let i = 0; i < count; i++) {
      const sum = (35 / 384) * k1[i]! + (500 / 1113) * k3[i]! + (125 / 192) * k4[i]!
      next[i] = state[i]! + h * (sum - (2187 / 6784) * k5[i]! + (11 / 84) * k6[i]!)
    }
    rates(next, k7)
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

  /**
   * The state at a share of the step just taken, of fourth order.
   *
   * Source: Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I (2nd ed. 1993), section II.6, the continuous
   * extension of this method (numbers from memory; a test holds them against a known motion).
   */
  within(state: Float64Array, h: number, share: number, into: Float64Array): void {
    const { next, k1, k3, k4, k5, k6, k7 } = this
    const rest = 1 - share
    for (let i = 0; i < state.length; i++) {
      const change = next[i]! - state[i]!
      const early = h * k1[i]! - change
      const late = change - h * k7[i]! - early
      const first = (-12715105075 / 11282082432) * k1[i]! + (87487479700 / 32700410799) * k3[i]!
      const second = (-10690763975 / 1880347072) * k4[i]! + (701980252875 / 199316789632) * k5[i]!
      const third = (-1453857185 / 822651844) * k6[i]! + (69997945 / 29380423) * k7[i]!
      const bend = late + rest * h * (first + second + third)
      into[i] = state[i]! + share * (change + rest * (early + share * bend))
    }
  }

  /** A little further than the step just taken, in a straight line. */
  onward(h: number, into: Float64Array): void {
    for (let i = 0; i < into.length; i++) into[i] = this.next[i]! + h * this.k7[i]!
  }
}
