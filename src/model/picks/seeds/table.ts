import type { Game } from '../../documents/types.ts'
import type { Standing } from './types.ts'

/** Below this share two values are level: they are sums of whole and half points, which rounding moves by less. */
const level = 1e-9

/** The ranking of one season: sums of all teams, and who is ahead of whom. */
export class SeasonTable {
  readonly teams: readonly string[]
  /** Criteria, ranking points first. */
  readonly criteria: number
  readonly sums: Float64Array
  readonly played: Float64Array
  /** Who is first where all criteria are level. */
  readonly lots: Float64Array
  private readonly begin: { sums: Float64Array; played: Float64Array }
  private readonly perMatch: boolean
  private readonly order: Int32Array

  constructor({ ranking }: Pick<Game, 'ranking'>, standings: readonly Standing[]) {
    this.teams = standings.map(({ team }) => team)
    this.criteria = 1 + ranking.then.length
    this.perMatch = ranking.per === 'match'
    this.begin = {
      sums: Float64Array.from(
        standings.flatMap(({ sums }) => Array.from({ length: this.criteria }, (_, c) => sums[c] ?? 0)),
      ),
      played: Float64Array.from(standings, ({ played }) => played),
    }
    this.sums = new Float64Array(this.begin.sums)
    this.played = new Float64Array(this.begin.played)
    this.lots = new Float64Array(standings.length)
    this.order = Int32Array.from(standings, (_, k) => k)
  }

  restart(): void {
    this.sums.set(this.begin.sums)
    this.played.set(this.begin.played)
  }

  /** Below 0 where the first team is ahead. `more`: ranking points that it has more than its sum says, for asking what would be. */
  compare(a: number, b: number, more = 0, moreOfOther = 0): number {
    const { criteria, sums, played, perMatch, lots } = this
    for (let c = 0; c < criteria; c++) {
      let x = sums[a * criteria + c] as number
      let y = sums[b * criteria + c] as number
      if (c === 0) {
        x += more
        y += moreOfOther
      }
      if (perMatch) {
        x /= Math.max(1, played[a] as number)
        y /= Math.max(1, played[b] as number)
      }
      if (Math.abs(x - y) > level * Math.max(1, Math.abs(x), Math.abs(y))) return y - x
    }
    return (lots[a] as number) - (lots[b] as number) || a - b
  }

  /** Teams by rank. The same array each time. */
  ranked(): Int32Array {
    return this.order.sort((a, b) => this.compare(a, b))
  }
}
