/**
 * Five Gauss–Hermite nodes of ln form: the mixture that stands for the form factor (median 1, geometric standard
 * deviation `spread`) of a match. An approximation, named as one: it is exact for polynomials of ln form up to degree 9.
 * Nodes and weights: roots of H5 and 2^4 5! √π / (25 H4²), in closed form.
 */
export function formNodes(spread: number): { factor: number; weight: number }[] {
  const sigma = Math.log(spread)
  if (!(sigma > 0)) return [{ factor: 1, weight: 1 }]
  const inner = Math.sqrt((5 - Math.sqrt(10)) / 2)
  const outer = Math.sqrt((5 + Math.sqrt(10)) / 2)
  return [-outer, -inner, 0, inner, outer].map((x) => ({
    factor: Math.exp(Math.SQRT2 * sigma * x),
    weight: weightOf(x),
  }))
}

function weightOf(x: number): number {
  const hermite4 = 16 * x ** 4 - 48 * x ** 2 + 12
  return (2 ** 4 * 120) / (25 * hermite4 ** 2)
}
