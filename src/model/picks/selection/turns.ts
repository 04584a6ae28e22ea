import type { SelectionRules, Turn } from './types.ts'

/** All turns in their order, as if every alliance filled up: common practice is one invitation accepted a round. */
export function turnsOf({ alliances, size, serpentine }: SelectionRules): Turn[] {
  return Array.from({ length: Math.max(0, size - 1) }, (_, index) => {
    const numbers = Array.from({ length: alliances }, (_, k) => k + 1)
    const order = serpentine && index % 2 === 1 ? numbers.toReversed() : numbers
    return order.map((alliance): Turn => ({ alliance, round: index + 1 }))
  }).flat()
}
