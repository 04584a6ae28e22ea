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
  /** data[values + j] = 0 for j = 0 … count − 1. */
  clear(values: number, count: number): void
  /** data[out + j − lags[k]] += data[weights + k] · data[values + j] for j = 0 … count − 1 and every k. */
  scatter(out: number, values: number, count: number, weights: number, lags: number, length: number): void
  /**
   * Carries probability through a leg: data[masses + i], i = 0 … count − 1, is that of beginning it with from + i steps left. It
   * takes shortest + reach − 1 − m steps with chance data[chances + m] and lags[k] steps, which rise, with chance data[late + k];
   * there are eight zeros or more on either side of masses and chances. What arrives is added to data[out + time left], without
   * what comes after time 0 and without the last late points that bring less than `least`; up to seven zeros are added beyond.
   * @returns the least time left that is reached
   */
  carry(
    out: number,
    from: number,
    masses: number,
    count: number,
    chances: number,
    reach: number,
    shortest: number,
    late: number,
    lags: number,
    points: number,
    least: number,
  ): number
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
    clear(values, count) {
      data.fill(0, values, values + count)
    },
    scatter(out, values, count, weights, lags, length) {
      for (let k = 0; k < length; k++)
        addScaled(out - (whole[lags + k] as number), values, count, data[weights + k] as number)
    },
    carry(out, from, masses, count, chances, reach, shortest, late, lags, points, least) {
      const core = from - shortest - reach + 1
      const low = Math.max(0, core)
      for (let j = low - core; j < count + reach - 1; j++) {
        const eight = low - core + (((j - low + core) >> 3) << 3)
        const end = Math.min(count, eight + 8)
        let sum = 0
        for (let m = Math.max(0, eight + 1 - reach); m < end; m++)
          sum += (data[masses + m] as number) * (data[chances + j - m] as number)
        data[out + core + j] = (data[out + core + j] as number) + sum
      }
      let most = 0
      for (let i = 0; i < count; i++) most = Math.max(most, data[masses + i] as number)
      const matters = (k: number) =>
        (whole[lags + k] as number) < from + count && most * (data[late + k] as number) >= least
      let last = points - 1
      while (last >= 0 && !matters(last)) last--
      if (last < 0) return low
      for (let k = last; k >= 0; k--) {
        const at = from - (whole[lags + k] as number)
        const skipped = Math.max(0, -at)
        addScaled(out + at + skipped, masses + skipped, count - skipped, data[late + k] as number)
      }
      return Math.min(low, Math.max(0, from - (whole[lags + last] as number)))
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
