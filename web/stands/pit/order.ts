/** The order with one more robot at its end; the last of them follows from the others, so that it need not be said. */
export function ranked(order: readonly string[], team: string, all: readonly string[]): readonly string[] {
  if (order.includes(team) || !all.includes(team)) return order
  const next = [...order, team]
  const left = all.filter((each) => !next.includes(each))
  return left.length === 1 ? [...next, left[0]!] : next
}
