import type { Game } from '../../documents/types.ts'
import { Moments } from '../../random/index.ts'
import type { SeasonTable } from './table.ts'
import type { MatchWorth, Places, SeedMatch } from './types.ts'

/** What a season brought in one of our matches. */
export interface Came {
  /** Of our alliance: 1 won, 0 tied, −1 lost; bonuses of both, ours first. */
  sign: number
  bonuses: readonly [ours: number, theirs: number]
}

/**
 * What one of our matches is worth: in each season our rank with the match won and lost, and with each bonus and without,
 * everything else as the season had it. The same luck on both sides, so that few seasons tell much.
 */
export class WorthOfMatch {
  private readonly match: string
  private readonly game: Pick<Game, 'ranking' | 'bonuses'>
  private readonly us: number
  private readonly own: readonly number[]
  private readonly others: readonly number[]
  private readonly more: Float64Array
  private readonly outcome = new Moments()
  private readonly bonuses: readonly { moments: Moments; reached: { count: number } }[]
  private readonly counts = { seasons: 0, won: 0, tied: 0 }

  constructor(
    game: Pick<Game, 'ranking' | 'bonuses'>,
    of: { match: SeedMatch; us: string; side: 0 | 1; places: ReadonlyMap<string, number> },
  ) {
    const { match, us, side, places } = of
    this.game = game
    this.match = match.id
    this.us = places.get(us) as number
    const counted = (slots: SeedMatch['ours']) =>
      slots.filter(({ counts }) => counts).map(({ team }) => places.get(team) as number)
    const sides = [counted(match.ours), counted(match.theirs)] as const
    this.own = sides[side]
    this.others = sides[1 - side] as readonly number[]
    this.more = new Float64Array(places.size)
    this.bonuses = game.bonuses.map(() => ({ moments: new Moments(), reached: { count: 0 } }))
  }

  add(table: SeasonTable, { sign, bonuses: [ours, theirs] }: Came): void {
    const { ranking, bonuses } = this.game
    const { counts } = this
    counts.seasons++
    counts.won += Number(sign > 0)
    counts.tied += Number(sign === 0)
    const paid = (outcome: number) => (outcome > 0 ? ranking.win : outcome < 0 ? ranking.loss : ranking.tie)
    const ranks = [1, -1].map((forced) =>
      this.rank(table, { own: paid(forced) - paid(sign), others: paid(-forced) - paid(-sign) }),
    ) as [number, number]
    this.outcome.add(ranks[1] - ranks[0])
    for (const [b, { rankingPoints, scope }] of bonuses.entries()) {
      const [has, have] = [(ours >> b) & 1, (theirs >> b) & 1]
      const forced = (to: number) =>
        this.rank(table, {
          own: (to - has) * rankingPoints,
          others: scope === 'both' ? (to - have) * rankingPoints : 0,
        })
      const each = this.bonuses[b] as (typeof this.bonuses)[number]
      each.moments.add(forced(0) - forced(1))
      each.reached.count += has
    }
  }

  report(): MatchWorth {
    const { seasons, won, tied } = this.counts
    const worth = placesOf(this.outcome)
    return {
      match: this.match,
      win: won / seasons,
      tie: tied / seasons,
      worth,
      bonuses: this.bonuses.map(({ moments, reached }, b) => {
        const own = placesOf(moments)
        return {
          bonus: this.game.bonuses[b]?.id as string,
          chance: reached.count / seasons,
          worth: own,
          perWin: worth.places > 1e-9 ? own.places / worth.places : null,
        }
      }),
    }
  }

  /** Our rank when both alliances of the match had so many ranking points more. */
  private rank(table: SeasonTable, { own, others }: { own: number; others: number }): number {
    const { more, us } = this
    for (const team of this.own) more[team] = own
    for (const team of this.others) more[team] = others
    let rank = 1
    for (let team = 0; team < more.length; team++)
      if (team !== us && table.compare(team, us, more[team] as number, more[us] as number) < 0) rank++
    for (const team of this.own) more[team] = 0
    for (const team of this.others) more[team] = 0
    return rank
  }
}

const placesOf = (moments: Moments): Places => ({ places: moments.mean, error: moments.standardError })
