import type { Trip } from '../documents/types.ts'
import type { AnyDuration } from '../duration/index.ts'
import { networkOf } from '../leg/network.ts'
import { type Quantiles, quantilesOf } from './quantiles.ts'

/** Tables are made once for equal durations. */
export class Tables {
  private readonly known = new Map<string, Quantiles>()

  of(duration: AnyDuration): Quantiles {
    const key = JSON.stringify(duration)
    const found = this.known.get(key) ?? quantilesOf(duration)
    this.known.set(key, found)
    return found
  }
}

/**
 * A trip made ready for many draws: its stages in an order in which each comes after all that it waits for, their tables
 * one after the other, and where their random words lie. Stage 0 is the drive.
 */
export class Program {
  /** Null where stages are given, else the whole leg's time. */
  readonly whole: Quantiles | null
  /** Stages after the drive, in an order in which they can be played. */
  readonly order: Int32Array
  readonly tables: readonly Quantiles[]
  /** Of stage s: the stages that it waits for are `waitsFor[firstOf[s]] … waitsFor[firstOf[s + 1] − 1]`. */
  readonly firstOf: Int32Array
  readonly waitsFor: Int32Array
  readonly each: Uint8Array
  /** The repeated stage after which nothing comes, 0 where there is none: pieces count one by one then. */
  readonly lastEach: number
  /** First word of each stage, the drive's is 0; the word after them all. */
  readonly wordOf: Int32Array
  readonly words: number

  /**
   * @param load the most pieces of one trip
   * @throws ModelError 'invalid' for loops and unknown stages
   */
  constructor(trip: Trip, load: number, tables: Tables) {
    const stages = 'stages' in trip ? trip.stages : []
    const network = networkOf(stages)
    const count = network.ids.length
    this.whole = 'whole' in trip ? tables.of(trip.whole) : null
    this.order = Int32Array.from(network.order.filter((stage) => stage > 0))
    // The drive's own table belongs to the leg: its place is kept so that numbers stay the same.
    const none = { values: new Float64Array(1), scale: 2 ** -32 }
    this.tables = [none, ...stages.map((stage) => tables.of(stage.duration))]
    this.each = Uint8Array.from(network.ids, (_, i) => (i > 0 && stages[i - 1]?.each ? 1 : 0))
    this.firstOf = new Int32Array(count + 1)
    this.wordOf = new Int32Array(count + 1)
    for (let s = 0; s < count; s++) {
      this.firstOf[s + 1] = (this.firstOf[s] as number) + (network.after[s] as readonly number[]).length
      this.wordOf[s + 1] = (this.wordOf[s] as number) + (this.each[s] ? load : 1)
    }
    this.waitsFor = Int32Array.from(network.after.flat())
    const sink = network.sinks.length === 1 ? (network.sinks[0] as number) : 0
    this.lastEach = sink > 0 && this.each[sink] ? sink : 0
    this.words = this.wordOf[count] as number
  }
}
