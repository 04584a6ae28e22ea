/** Erlang: the sum of `shape` exponentials of mean `scale`. P(X <= x) = 1 - e^(-x/scale) · Σ_{k < shape} (x/scale)^k / k!. */
export function erlangCdf(x: number, { shape, scale }: { shape: number; scale: number }): number {
  if (x <= 0) return 0
  let term = Math.exp(-x / scale)
  let above = 0
  for (let k = 0; k < shape; k++) {
    above += term
    term *= x / scale / (k + 1)
  }
  return 1 - above
}

/**
 * `count` equally likely atoms: the means of the distribution over its `count` quantile intervals, so that the mean is
 * exact. Uses E[X; X <= q] = shape · scale · F_{shape + 1}(q).
 */
export function erlangAtoms(count: number, { shape, scale }: { shape: number; scale: number }): number[] {
  const below = [0]
  for (let i = 1; i < count; i++) {
    below.push(shape * scale * erlangCdf(quantile(i / count), { shape: shape + 1, scale }))
  }
  below.push(shape * scale)
  return Array.from({ length: count }, (_, i) => (below[i + 1]! - below[i]!) * count)

  function quantile(p: number): number {
    let low = 0
    let high = shape * scale
    while (erlangCdf(high, { shape, scale }) < p) high *= 2
    for (let i = 0; i < 80; i++) {
      const x = (low + high) / 2
      if (erlangCdf(x, { shape, scale }) < p) low = x
      else high = x
    }
    return (low + high) / 2
  }
}
