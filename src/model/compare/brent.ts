/** A bracket of a sign change, closed to the asked width. */
export interface Root {
  /** The end of the bracket where the function is smaller in size. */
  at: number
  other: number
  valueAt: number
  valueOther: number
}

/**
 * Brent's zero finder on a bracket [low, high] whose ends differ in sign: inverse quadratic interpolation and secant
 * steps, with bisection as the safeguard. Ends on an exact zero, or with a bracket not wider than `width`; unlike most
 * versions it returns the bracket, so that a jump (values on both sides far from 0) can be told from a root.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4.
 */
export function brent(
  f: (x: number) => number,
  bracket: { low: number; high: number; valueLow: number; valueHigh: number },
  width: number,
): Root {
  let a = bracket.low
  let fa = bracket.valueLow
  let b = bracket.high
  let fb = bracket.valueHigh
  let c = a
  let fc = fa
  let step = b - a
  let before = step
  for (;;) {
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = b - a
      before = step
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      ;[a, b, c] = [b, c, b]
      ;[fa, fb, fc] = [fb, fc, fb]
    }
    const tolerance = Math.max(width / 2, 2 * Number.EPSILON * Math.abs(b))
    const half = (c - b) / 2
    if (fb === 0 || Math.abs(half) <= tolerance) return { at: b, other: c, valueAt: fb, valueOther: fc }
    const next = interpolated()
    if (next === null) {
      step = half
      before = half
    } else {
      before = step
      step = next
    }
    a = b
    fa = fb
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance
    fb = f(b)

    function interpolated(): number | null {
      if (Math.abs(before) < tolerance || Math.abs(fa) <= Math.abs(fb)) return null
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * half * s
        q = 1 - s
      } else {
        const r = fb / fc
        const t = fa / fc
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1))
        q = (t - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      const shrinks = 2 * p < Math.min(3 * half * q - Math.abs(tolerance * q), Math.abs(before * q))
      return shrinks ? p / q : null
    }
  }
}
