/** Records that a chance is counted from, at least, where there are as many. */
const fewest = 500
const steps = 240

/** A simulated match as a table of chances knows it: the lead that was fitted and the lead that came. */
export interface LeadRecords {
  fitted: Float64Array
  leads: Float64Array
  /** Points come whole, so that leads of other robots are rounded: otherwise there would be no ties. */
  whole: boolean
}

/**
 * Chance of winning, a tie half, by the fitted lead: what simulated matches with the nearest fitted leads lay off theirs,
 * moved there. Either alliance of a match may be the first, so that chances of both add up to 1, and a larger lead is never worth less.
 */
export class WinTable {
  private readonly most: number
  private readonly chances: Float64Array

  constructor(records: LeadRecords) {
    const { fitted, leads, whole } = mirrored(records)
    const order = Uint32Array.from(fitted, (_, k) => k).sort(
      (a, b) => (fitted[a] as number) - (fitted[b] as number) || a - b,
    )
    const rising = Float64Array.from(order, (k) => fitted[k] as number)
    const off = Float64Array.from(order, (k) => (leads[k] as number) - (fitted[k] as number))
    const spread = Math.sqrt(off.reduce((sum, own) => sum + own * own, 0) / Math.max(1, off.length))
    this.most = Math.max(1, (rising.at(-1) ?? 0) + 4 * spread)
    const wanted = Math.min(off.length, Math.max(fewest, off.length / 2))
    const own = Float64Array.from({ length: steps + 1 }, (_, k) => {
      const lead = this.most * ((2 * k) / steps - 1)
      const [from, to] = near(rising, { value: lead, wanted })
      let sum = 0
      for (let r = from; r < to; r++) {
        const moved = lead + (off[r] as number)
        const sign = whole ? Math.round(moved) : moved
        sum += sign > 1e-9 ? 1 : sign < -1e-9 ? 0 : 0.5
      }
      return sum / (to - from)
    })
    const rises = neverFalling(own)
    this.chances = rises.map((chance, k) => (chance + 1 - (rises[steps - k] as number)) / 2)
  }

  chance(lead: number): number {
    const { most, chances } = this
    const at = (steps * (Math.min(most, Math.max(-most, lead)) / most + 1)) / 2
    const k = Math.min(steps - 1, Math.floor(at))
    const [below, above] = [chances[k] as number, chances[k + 1] as number]
    return below + (at - k) * (above - below)
  }
}

function mirrored({ fitted, leads, whole }: LeadRecords): LeadRecords {
  const both = (values: Float64Array) => {
    const twice = new Float64Array(2 * values.length)
    twice.set(values)
    twice.set(
      values.map((value) => -value),
      values.length,
    )
    return twice
  }
  return { fitted: both(fitted), leads: both(leads), whole }
}

/** The stretch of rising values around one that holds as many as are wanted. */
function near(rising: Float64Array, { value, wanted }: { value: number; wanted: number }): [from: number, to: number] {
  let [low, high] = [0, rising.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((rising[middle] as number) < value) low = middle + 1
    else high = middle
  }
  let [from, to] = [low, low]
  while (to - from < wanted) {
    const below = from > 0 ? value - (rising[from - 1] as number) : Number.POSITIVE_INFINITY
    const above = to < rising.length ? (rising[to] as number) - value : Number.POSITIVE_INFINITY
    if (below <= above) from--
    else to++
  }
  return [from, to]
}

/** The nearest rising row: neighbours that fall are replaced by their mean (pool adjacent violators; Ayer et al. 1955). */
function neverFalling(values: Float64Array): Float64Array {
  const blocks: { mean: number; count: number }[] = []
  for (const value of values) {
    let block = { mean: value, count: 1 }
    for (let last = blocks.at(-1); last && last.mean >= block.mean; last = blocks.at(-1)) {
      blocks.pop()
      const count = last.count + block.count
      block = { mean: (last.mean * last.count + block.mean * block.count) / count, count }
    }
    blocks.push(block)
  }
  return Float64Array.from(blocks.flatMap(({ mean, count }) => new Array<number>(count).fill(mean)))
}
