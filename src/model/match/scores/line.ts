/** What the scores of some simulated matches say of each draw of the robots. */
interface Draws {
  readonly count: Float64Array
  readonly mean: Float64Array
  /** Variance within draws. */
  readonly variance: number
}

/**
 * Expected scores of an alliance by draw: on the straight line of least squares in its robots' closed-form expected points,
 * and from there towards the draw's own mean, as far as that mean is surer than the line. The points know nothing of queues,
 * full goals and who holds a goal, so that draws lie off the line by more than luck; τ² is the variance of that.
 *
 * Source: Fay & Herriot, Estimates of income for small places (1979), with τ² by moments.
 *
 * @param expected closed-form points by draw
 * @param draw by match, which draw was played
 */
export function fittedScores(expected: Float64Array, draw: Uint16Array, scores: Float64Array): Float64Array {
  const draws = drawsOf(expected.length, draw, scores)
  const { count, mean, variance } = draws
  const line = lineThrough(expected, draws)
  const many = count.reduce((sum, own) => sum + Number(own > 0), 0)
  if (many < 3) return line.map((own, d) => (count[d] ? (mean[d] as number) : own))
  const off = mean.map((own, d) => (count[d] as number) * (own - (line[d] as number)) ** 2)
  const free = many - 2
  const tau = Math.max(0, off.reduce((sum, own) => sum + own, 0) - free * variance) / ((scores.length * free) / many)
  return line.map((own, d) => {
    const n = count[d] as number
    return n > 0 && tau > 0 ? own + (tau / (tau + variance / n)) * ((mean[d] as number) - own) : own
  })
}

function drawsOf(many: number, draw: Uint16Array, scores: Float64Array): Draws {
  const count = new Float64Array(many)
  const mean = new Float64Array(many)
  for (const [k, score] of scores.entries()) {
    const d = draw[k] as number
    count[d] = (count[d] as number) + 1
    mean[d] = (mean[d] as number) + (score - (mean[d] as number)) / (count[d] as number)
  }
  const squares = scores.reduce((sum, score, k) => sum + (score - (mean[draw[k] as number] as number)) ** 2, 0)
  return { count, mean, variance: squares / Math.max(1, scores.length - many) }
}

/** The mean of all where the expected points are alike. */
function lineThrough(expected: Float64Array, { count, mean }: Draws): Float64Array {
  const sum = (value: (d: number) => number) => count.reduce((total, n, d) => total + n * value(d), 0)
  const n = sum(() => 1)
  const x = sum((d) => expected[d] as number) / n
  const y = sum((d) => mean[d] as number) / n
  const xx = sum((d) => ((expected[d] as number) - x) ** 2)
  const xy = sum((d) => ((expected[d] as number) - x) * ((mean[d] as number) - y))
  // Below this the points differ by rounding only.
  const slope = xx > 1e-9 * n ? xy / xx : 0
  return expected.map((own) => y + slope * (own - x))
}
