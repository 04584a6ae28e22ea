interface Point {
  at: number[]
  value: number
}

/**
 * A minimum of a function of a few numbers without derivatives, from a start, to about 1e-7 of each.
 *
 * Source: Nelder & Mead, The Computer Journal 7 (1965), 308–313. Begun anew once where it ended, because a simplex can
 * collapse.
 */
export function minimum(f: (at: readonly number[]) => number, start: readonly number[]): Point {
  const once = descend(f, start, 0.1)
  return descend(f, once.at, 0.02)
}

function descend(f: (at: readonly number[]) => number, start: readonly number[], size: number): Point {
  const point = (at: number[]): Point => ({ at, value: f(at) })
  const simplex = [point([...start]), ...start.map((_, k) => point(start.map((x, i) => (i === k ? x + size : x))))]
  const last = simplex.length - 1
  for (let turn = 0; turn < 400; turn++) {
    simplex.sort((a, b) => a.value - b.value)
    const best = simplex[0]!
    const worst = simplex[last]!
    if (simplex.every(({ at }) => at.every((x, i) => Math.abs(x - best.at[i]!) < 1e-7))) break
    const centre = start.map((_, i) => simplex.slice(0, last).reduce((sum, { at }) => sum + at[i]!, 0) / last)
    const along = (share: number) => point(centre.map((x, i) => x + share * (worst.at[i]! - x)))
    const reflected = along(-1)
    if (reflected.value < best.value) {
      const further = along(-2)
      simplex[last] = further.value < reflected.value ? further : reflected
    } else if (reflected.value < simplex[last - 1]!.value) simplex[last] = reflected
    else {
      const nearer = along(reflected.value < worst.value ? -0.5 : 0.5)
      if (nearer.value < Math.min(reflected.value, worst.value)) simplex[last] = nearer
      else for (let k = 1; k <= last; k++) simplex[k] = point(simplex[k]!.at.map((x, i) => (x + best.at[i]!) / 2))
    }
  }
  return simplex.reduce((a, b) => (b.value < a.value ? b : a))
}
