import { equal } from '../reckoning.ts'
import { fittedScores } from './line.ts'
import type { Calibration, Expected, Records } from './types.ts'

/** Records that a score is drawn from, at least, where there are as many. */
const fewest = 500

/**
 * Scores of one match, drawn without playing it: what each alliance is expected to score with a draw of the robots, plus what
 * one of the simulated matches with the nearest fitted lead lay off its own fitted scores. Both alliances and the bonuses come
 * from the same simulated match, so that what they have to do with each other stays.
 *
 * With one draw of the robots, or many simulated matches of each, a drawn score is that of a simulated match.
 */
export class ScoreSpread {
  readonly records: Records
  /** By draw. */
  private readonly fitted: Expected
  /** Records by rising fitted lead, and by draw the stretch of them that is near. */
  private readonly order: Int32Array
  private readonly from: Int32Array
  private readonly count: Int32Array
  private readonly whole: boolean

  constructor({ records, expected }: Calibration) {
    this.records = records
    this.fitted = {
      ours: fittedScores(expected.ours, records.draw, records.ours),
      theirs: fittedScores(expected.theirs, records.draw, records.theirs),
    }
    this.whole = [records.ours, records.theirs].every((scores) => scores.every((score) => Number.isInteger(score)))
    const leads = this.fitted.ours.map((ours, d) => ours - (this.fitted.theirs[d] as number))
    const lead = (record: number) => leads[records.draw[record] as number] as number
    this.order = Int32Array.from(records.draw, (_, record) => record).sort((a, b) => lead(a) - lead(b) || a - b)
    this.from = new Int32Array(leads.length)
    this.count = new Int32Array(leads.length)
    const rising = Float64Array.from(this.order, lead)
    for (const [d, own] of leads.entries()) {
      const [from, to] = near(rising, own)
      this.from[d] = from
      this.count[d] = to - from
    }
  }

  get draws(): number {
    return this.from.length
  }

  /** A record near the fitted scores of a draw, for a random word of 32 bits. */
  pick(draw: number, word: number): number {
    const k = Math.floor((word / 2 ** 32) * (this.count[draw] as number))
    return this.order[(this.from[draw] as number) + k] as number
  }

  /** The score that a record's match would have come to with the robots of a draw. */
  ours(record: number, draw: number): number {
    return this.moved(this.fitted.ours, this.records.ours, record, draw)
  }

  theirs(record: number, draw: number): number {
    return this.moved(this.fitted.theirs, this.records.theirs, record, draw)
  }

  /** Calls for every record near a draw. */
  each(draw: number, visit: (record: number) => void): void {
    const from = this.from[draw] as number
    for (let k = from; k < from + (this.count[draw] as number); k++) visit(this.order[k] as number)
  }

  private moved(fitted: Float64Array, scores: Float64Array, record: number, draw: number): number {
    const score = scores[record] as number
    const own = this.records.draw[record] as number
    if (own === draw) return score
    const moved = score + (fitted[draw] as number) - (fitted[own] as number)
    // Where points come whole, so do drawn ones: otherwise there would be no ties.
    return this.whole ? Math.round(moved) : moved
  }
}

/** Our lead's sign: 1 for a win, 0 for a tie, −1 for a loss. */
export const outcome = (lead: number): number => (lead > equal ? 1 : lead < -equal ? -1 : 0)

/** The stretch of rising values around one: all that equal it, and as many to either side as are needed for enough. */
function near(rising: Float64Array, value: number): [from: number, to: number] {
  const n = rising.length
  let from = firstNotBelow(rising, value - 1e-9)
  let to = firstNotBelow(rising, value + 1e-9)
  const wanted = Math.min(n, fewest)
  while (to - from < wanted) {
    const below = from > 0 ? value - (rising[from - 1] as number) : Number.POSITIVE_INFINITY
    const above = to < n ? (rising[to] as number) - value : Number.POSITIVE_INFINITY
    if (below <= above) from--
    else to++
  }
  return [from, to]
}

function firstNotBelow(rising: Float64Array, value: number): number {
  let [low, high] = [0, rising.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((rising[middle] as number) < value) low = middle + 1
    else high = middle
  }
  return low
}
