/** The inner loops on numbers in one array; places are indices. See kernel.wat, of which these are the plain form. */
export interface Kernel {
  /** data[out + j] = Σ_m data[filter + m] · data[values + j + step · m], j = 0 … count − 1; up to seven more are written. */
  correlate(out: number, count: number, filter: number, length: number, values: number, step: number): void
  /**
   * data[out + j] = Σ_m data[filter + m] · data[values + j − m], j = 0 … length + reach − 2, where there are `reach` values and
   * eight zeros or more on either side; up to seven more are written.
   */
  convolve(out: number, filter: number, length: number, values: number, reach: number): void
  /** data[out + j] += Σ_k data[weights + k] · data[values + j − lags[k]], by eight j for the lags up to `reach` + 7 + j. */
  addLagged(
    out: number,
    count: number,
    weights: number,
    lags: number,
    length: number,
    values: number,
    reach: number,
  ): void
  /** data[out + j] += scale · data[values + j] for j = 0 … count − 1. */
  addScaled(out: number, values: number, count: number, scale: number): void
  /** data[out + j − lags[k]] += data[weights + k] · data[values + j] for j = 0 … count − 1 and every k. */
  scatter(out: number, values: number, count: number, weights: number, lags: number, length: number): void
  /** data[out + j] = data[base + j] + scale · data[values + j], j = 0 … count − 1; up to seven more are written. */
  combine(out: number, base: number, values: number, count: number, scale: number): void
  /** Where data[values + j] > data[best + j] + tie: that is the best, and `action` the choice; one more may be written. */
  offer(best: number, choice: number, values: number, count: number, action: number, tie: number): void
  /** data[best + j] = 0 and data[choice + j] = action for j = 0 … count − 1; one more may be written. */
  none(best: number, choice: number, count: number, action: number): void
  /** Where data[values + j] > data[best + j] + tie: that is the best, and data[actions + j] the choice; one more may be written. */
  offerEach(best: number, choice: number, values: number, actions: number, count: number, tie: number): void
  /** short[out + j] = data[choice + j] for j = 0 … count − 1. */
  shorten(out: number, choice: number, count: number): void
  /** short[out + width · k + j] = short[from + j] for j = 0 … count − 1 and k = 0 … rows − 1. */
  copyShorts(out: number, width: number, rows: number, from: number, count: number): void
  /** Eight numbers of each row: `correlate` with step 1, then `addLagged` with values `shift` further; rows of out are `width` apart. */
  followRows(
    out: number,
    width: number,
    filter: number,
    length: number,
    values: number,
    row: number,
    rows: number,
    weights: number,
    lags: number,
    late: number,
    shift: number,
    reach: number,
  ): void
  /** Eight numbers of each row: `combine`. */
  combineRows(
    out: number,
    width: number,
    base: number,
    baseRow: number,
    values: number,
    row: number,
    rows: number,
    scale: number,
  ): void
  /** Eight numbers of each row: `offer`, where nobody asks for the choices: eight numbers from `choice` on are written over. */
  offerRows(best: number, width: number, choice: number, values: number, row: number, rows: number, tie: number): void
}

/** For engines without the instructions, or pages that must not compile. Same sums in the same order. */
export function plainKernel(data: Float64Array, whole: Int32Array, short: Int16Array): Kernel {
  const addScaled: Kernel['addScaled'] = (out, values, count, scale) => {
    for (let j = 0; j < count; j++) data[out + j] = (data[out + j] as number) + scale * (data[values + j] as number)
  }
  const plain: Kernel = {
    addScaled,
    correlate(out, count, filter, length, values, step) {
      for (let j = 0; j < ((count + 7) >> 3) << 3; j++) {
        let sum = 0
        let v = values + j
        for (let m = filter; m < filter + length; m++, v += step) sum += (data[m] as number) * (data[v] as number)
        data[out + j] = sum
      }
    },
    convolve(out, filter, length, values, reach) {
      const count = length + reach - 1
      for (let j = 0; count > 0 && j < ((count + 7) >> 3) << 3; j++) {
        const eight = (j >> 3) << 3
        const end = Math.min(length, eight + 8)
        let sum = 0
        for (let m = Math.max(0, eight + 1 - reach); m < end; m++)
          sum += (data[filter + m] as number) * (data[values + j - m] as number)
        data[out + j] = sum
      }
    },
    addLagged(out, count, weights, lags, length, values, reach) {
      for (let j = 0; j < ((count + 7) >> 3) << 3; j++) {
        const most = reach + 7 + ((j >> 3) << 3)
        let sum = data[out + j] as number
        for (let k = 0; k < length && (whole[lags + k] as number) <= most; k++)
          sum += (data[weights + k] as number) * (data[values + j - (whole[lags + k] as number)] as number)
        data[out + j] = sum
      }
    },
    scatter(out, values, count, weights, lags, length) {
      for (let k = 0; k < length; k++)
        addScaled(out - (whole[lags + k] as number), values, count, data[weights + k] as number)
    },
    combine(out, base, values, count, scale) {
      for (let j = 0; j < ((count + 7) >> 3) << 3; j++)
        data[out + j] = (data[base + j] as number) + scale * (data[values + j] as number)
    },
    offer(best, choice, values, count, action, tie) {
      for (let j = 0; j < ((count + 1) >> 1) << 1; j++)
        if ((data[values + j] as number) > (data[best + j] as number) + tie) {
          data[best + j] = data[values + j] as number
          data[choice + j] = action
        }
    },
    none(best, choice, count, action) {
      data.fill(0, best, best + count)
      data.fill(action, choice, choice + count)
    },
    offerEach(best, choice, values, actions, count, tie) {
      for (let j = 0; j < count; j++)
        if ((data[values + j] as number) > (data[best + j] as number) + tie) {
          data[best + j] = data[values + j] as number
          data[choice + j] = data[actions + j] as number
        }
    },
    shorten(out, choice, count) {
      for (let j = 0; j < count; j++) short[out + j] = data[choice + j] as number
    },
    copyShorts(out, width, rows, from, count) {
      for (let k = 0; k < rows; k++) short.copyWithin(out + k * width, from, from + count)
    },
    followRows(out, width, filter, length, values, row, rows, weights, lags, late, shift, reach) {
      for (let k = 0; k < rows; k++) {
        plain.correlate(out + k * width, 8, filter, length, values + k * row, 1)
        plain.addLagged(out + k * width, 8, weights, lags, late, values + k * row + shift, reach)
      }
    },
    combineRows(out, width, base, baseRow, values, row, rows, scale) {
      for (let k = 0; k < rows; k++) plain.combine(out + k * width, base + k * baseRow, values + k * row, 8, scale)
    },
    offerRows(best, width, choice, values, row, rows, tie) {
      for (let k = 0; k < rows; k++) plain.offer(best + k * width, choice, values + k * row, 8, 0, tie)
    },
  }
  return plain
}
