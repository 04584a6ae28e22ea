/** A binary heap of numbered items by rising cost. An item may be in it several times. */
export class CostQueue {
  private readonly items: number[] = []
  private readonly costs: number[] = []

  get size(): number {
    return this.items.length
  }

  push(item: number, cost: number) {
    const { items, costs } = this
    let at = items.length
    while (at > 0) {
      const above = (at - 1) >> 1
      if (costs[above]! <= cost) break
      items[at] = items[above]!
      costs[at] = costs[above]!
      at = above
    }
    items[at] = item
    costs[at] = cost
  }

  /** Takes the cheapest item out; only while size > 0. */
  pop(): { item: number; cost: number } {
    const { items, costs } = this
    const first = { item: items[0]!, cost: costs[0]! }
    const item = items.pop()!
    const cost = costs.pop()!
    const count = items.length
    if (count === 0) return first
    let at = 0
    for (;;) {
      let below = 2 * at + 1
      if (below >= count) break
      if (below + 1 < count && costs[below + 1]! < costs[below]!) below++
      if (costs[below]! >= cost) break
      items[at] = items[below]!
      costs[at] = costs[below]!
      at = below
    }
    items[at] = item
    costs[at] = cost
    return first
  }
}
