/**
 * Mean and variance of numbers that come one by one, without the cancellation of a sum of squares.
 *
 * Source: Welford, Technometrics 4 (1962), 419–420.
 */
export class Moments {
  count = 0
  mean = 0
  private squares = 0

  add(value: number): this {
    const distance = value - this.mean
    this.count++
    this.mean += distance / this.count
    this.squares += distance * (value - this.mean)
    return this
  }

  /** With divisor count − 1; 0 for fewer than two numbers. */
  get sampleVariance(): number {
    return this.count < 2 ? 0 : this.squares / (this.count - 1)
  }

  /** Standard error of the mean. */
  get standardError(): number {
    return this.count < 2 ? 0 : Math.sqrt(this.sampleVariance / this.count)
  }
}
