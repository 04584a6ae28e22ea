/** Numbers of whole events: what one event's matches have in common counts once. */

export interface Scored {
  event: number
  /** Forecast chance, and what came of it: 0, ½ or 1. */
  p: number
  y: number
}

export interface Clustered {
  value: number
  error: number
}

/** Mean over matches, with its error by how sums of events differ. */
export function clusteredMean(values: readonly { event: number; value: number }[]): Clustered {
  const mean = values.reduce((sum, { value }) => sum + value, 0) / values.length
  const sums = new Map<number, number>()
  for (const { event, value } of values) sums.set(event, (sums.get(event) ?? 0) + value - mean)
  const squares = [...sums.values()].reduce((sum, x) => sum + x * x, 0)
  return { value: mean, error: Math.sqrt((squares * sums.size) / (sums.size - 1)) / values.length }
}

/**
 * Logistic regression of what came on the log-odds of what was forecast; 0 and 1 where forecasts are calibrated. Errors by the
 * sandwich over events. Sources: Cox, Biometrika 45 (1958), 562–565, for the recalibration; Liang & Zeger, Biometrika 73
 * (1986), 13–22, for the errors.
 */
export function recalibration(all: readonly Scored[]): { intercept: Clustered; slope: Clustered } {
  const points = all.map(({ event, p, y }) => ({ event, x: Math.log(p / (1 - p)), y }))
  let [a, b] = [0, 1]
  const information = { aa: 0, ab: 0, bb: 0 }
  for (let turn = 0; turn < 25; turn++) {
    let [ga, gb] = [0, 0]
    Object.assign(information, { aa: 0, ab: 0, bb: 0 })
    for (const { x, y } of points) {
      const q = 1 / (1 + Math.exp(-(a + b * x)))
      const w = q * (1 - q)
      ga += y - q
      gb += (y - q) * x
      information.aa += w
      information.ab += w * x
      information.bb += w * x * x
    }
    const det = information.aa * information.bb - information.ab ** 2
    a += (information.bb * ga - information.ab * gb) / det
    b += (information.aa * gb - information.ab * ga) / det
  }
  const scores = new Map<number, [number, number]>()
  for (const { event, x, y } of points) {
    const off = y - 1 / (1 + Math.exp(-(a + b * x)))
    const own = scores.get(event) ?? [0, 0]
    scores.set(event, [own[0] + off, own[1] + off * x])
  }
  const { aa, ab, bb } = information
  const det = aa * bb - ab ** 2
  let [va, vb] = [0, 0]
  for (const [sa, sb] of scores.values()) {
    va += ((bb * sa - ab * sb) / det) ** 2
    vb += ((aa * sb - ab * sa) / det) ** 2
  }
  const small = scores.size / (scores.size - 1)
  return {
    intercept: { value: a, error: Math.sqrt(va * small) },
    slope: { value: b, error: Math.sqrt(vb * small) },
  }
}
