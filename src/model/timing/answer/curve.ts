/** Places of a polynomial of eighth degree. */
const knots = 9

/** How far the curve may be off where it is checked, as a share of how much it rises or falls. */
const allowed = 1e-3

/** Shares of the way between the first and the last number where the curve is checked: between the knots, apart from each other. */
const checks = [0.067, 0.41, 0.78]

/**
 * The times at many numbers of one input, from a curve through few of them: each time is a whole motion, and over one input
 * most motions change smoothly. Null where it is impossible somewhere, or where the curve misses a time that is computed to
 * check it by more than a thousandth of what the input does at all; then every number has to be asked for itself.
 *
 * Source: Chebyshev points with barycentric weights, Berrut & Trefethen, SIAM Review 46 (2004), 501–517, section 5.
 */
export function alongCurve(timeAt: (value: number) => number | null, values: ArrayLike<number>): number[] | null {
  const all = Array.from(values)
  const [low, high] = [Math.min(...all), Math.max(...all)]
  if (all.length <= knots + checks.length || low === high) return null
  const places = Array.from({ length: knots }, (_, k) => {
    const share = (1 - Math.cos((Math.PI * k) / (knots - 1))) / 2
    return k === knots - 1 ? high : low + share * (high - low)
  })
  const times: number[] = []
  for (const place of places) {
    const time = timeAt(place)
    if (time === null) return null
    times.push(time)
  }
  const curve = through(places, times)
  const most = allowed * (Math.max(...times) - Math.min(...times))
  for (const share of checks) {
    const place = low + share * (high - low)
    const time = timeAt(place)
    if (time === null || Math.abs(curve(place) - time) > most) return null
  }
  return all.map(curve)
}

function through(places: readonly number[], times: readonly number[]): (place: number) => number {
  return (place) => {
    let [above, below] = [0, 0]
    for (const [k, knot] of places.entries()) {
      if (place === knot) return times[k]!
      const end = k === 0 || k === places.length - 1 ? 0.5 : 1
      const weight = ((k % 2 === 0 ? 1 : -1) * end) / (place - knot)
      above += weight * times[k]!
      below += weight
    }
    return above / below
  }
}
