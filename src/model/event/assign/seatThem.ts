import { seatKey, seats } from '../seats.ts'

/** How often each has watched from each seat, so that nobody watches the same place all day. */
export class Seating {
  private readonly had = new Map<string, Map<string, number>>()
  private readonly last = new Map<string, string>()

  note(person: string, seat: string): void {
    const own = this.had.get(person) ?? new Map<string, number>()
    this.had.set(person, own.set(seat, (own.get(seat) ?? 0) + 1))
    this.last.set(person, seat)
  }

  /**
   * Who sits where: of all ways to seat them the one with the fewest repetitions, the first of equals. Nobody ('') is seated like a
   * person, so that empty seats go round too.
   */
  seat(people: readonly string[], taken: ReadonlyMap<string, string>): Map<string, string> {
    const free = seats.map(seatKey).filter((seat) => !taken.has(seat))
    const all = [...people, ...Array.from({ length: Math.max(0, free.length - people.length) }, () => '')]
    const costs = all.map((person) => free.map((seat) => this.cost(person, seat)))
    const order = cheapest(costs)
    const placed = new Map(taken)
    for (const [index, place] of order.entries()) placed.set(free[place]!, all[index]!)
    for (const [seat, person] of placed) this.note(person, seat)
    return placed
  }

  private cost(person: string, seat: string): number {
    const often = this.had.get(person)?.get(seat) ?? 0
    // Squares: twice each of two seats is better than once and three times.
    return 4 * often * often + (this.last.get(person) === seat ? 1 : 0)
  }
}

/** For each row a column of its own so that the costs add up to the least: all ways are tried, six of six are 720. */
function cheapest(costs: readonly (readonly number[])[]): number[] {
  let best: number[] = []
  let least = Number.POSITIVE_INFINITY
  const used = new Set<number>()
  const order: number[] = []
  const descend = (row: number, sum: number): void => {
    if (sum >= least) return
    if (row === costs.length) {
      best = [...order]
      least = sum
      return
    }
    costs[row]!.forEach((cost, place) => {
      if (used.has(place)) return
      used.add(place)
      order.push(place)
      descend(row + 1, sum + cost)
      order.pop()
      used.delete(place)
    })
  }
  descend(0, 0)
  return best
}
