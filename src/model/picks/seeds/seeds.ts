import type { Game } from '../../documents/types.ts'
import { outcome } from '../../match/scores/spread.ts'
import { philox } from '../../random/index.ts'
import { type MatchSpread, movedScore, pickOne } from './spreads.ts'
import { SeasonTable } from './table.ts'
import type { SeedMatch, SeedsReport, SeedsRequest, TeamSeed } from './types.ts'
import { type Came, WorthOfMatch } from './worth.ts'

/** What a match is worth is asked in each so-many-th season of a draw. */
const worthEvery = 4

interface Ready {
  match: SeedMatch
  spread: MatchSpread
  /** Place of each team in the table, −1 for one whose match counts for nothing. */
  sides: readonly [readonly number[], readonly number[]]
  worth: WorthOfMatch | null
  /** Which side is ours. */
  side: 0 | 1
}

/**
 * Where teams end: the matches to come drawn again and again from what few simulated ones say, each season with one draw of
 * what is not known of all teams, ranked by the game's rules; ties that are left are split by lot.
 *
 * @param spreads by match, in their order
 */
export function seedsOf(request: SeedsRequest, spreads: readonly MatchSpread[]): SeedsReport {
  const { game, standings, matches, seasons, seed, us } = request
  const table = new SeasonTable(game, standings)
  const places = new Map(table.teams.map((team, place) => [team, place]))
  const ready = matches.map((match, k): Ready => {
    const sides = [match.ours, match.theirs].map((slots) =>
      slots.map(({ team, counts }) => (counts ? (places.get(team) ?? -1) : -1)),
    ) as unknown as Ready['sides']
    const side = match.theirs.some(({ team, counts }) => counts && team === us) ? 1 : 0
    const isOurs =
      us !== undefined && [...match.ours, ...match.theirs].some(({ team, counts }) => counts && team === us)
    const worth = isOurs ? new WorthOfMatch(game, { match, us, side, places }) : null
    return { match, spread: spreads[k] as MatchSpread, sides, worth, side }
  })
  const draws = Math.max(1, (spreads[0]?.fitted.length ?? 2) / 2)
  const ranks = new Tally(table.teams.length, draws)
  const words = new Uint32Array(4)
  const key = [seed % 2 ** 32, Math.floor(seed / 2 ** 32)]
  const counter = [0, 0, 0, 5]
  const came = new Map<Ready, Came>()
  for (let season = 0; season < seasons; season++) {
    const draw = season % draws
    table.restart()
    counter[0] = season
    for (let k = 0; k < ready.length; k++) {
      counter[1] = k
      philox(counter, key, words)
      const each = ready[k] as Ready
      const result = enter(table, game, { of: each, record: pickOne(each.spread, draw, words), draw })
      if (each.worth) came.set(each, result)
    }
    for (let team = 0; team < table.lots.length; team++) {
      if (team % 4 === 0) {
        counter[1] = ready.length + team
        philox(counter, key, words)
      }
      table.lots[team] = words[team % 4] as number
    }
    ranks.add(table.ranked(), draw)
    if (Math.floor(season / draws) % worthEvery === 0) for (const [each, result] of came) each.worth?.add(table, result)
  }
  return {
    seasons,
    seed,
    teams: ranks.report(table.teams, seasons),
    ours: ready.flatMap(({ worth }) => (worth && seasons > 0 ? [worth.report()] : [])),
  }
}

/** Writes a drawn match into the season's table; tells how it went for our side. */
function enter(
  table: SeasonTable,
  { ranking, bonuses }: Pick<Game, 'ranking' | 'bonuses'>,
  { of, record, draw }: { of: Ready; record: number; draw: number },
): Came {
  const { spread, sides, side: own } = of
  const { played } = spread
  const scores = [0, 1].map((side) => movedScore(spread, { record, draw, side })) as [number, number]
  const sign = outcome(scores[0] - scores[1])
  const { criteria } = table
  for (let side = 0; side < 2; side++) {
    const result = side === 0 ? sign : -sign
    let points = result > 0 ? ranking.win : result < 0 ? ranking.loss : ranking.tie
    const reached = played.bonuses[2 * record + side] as number
    for (let b = 0; b < bonuses.length; b++) if ((reached >> b) & 1) points += bonuses[b]?.rankingPoints as number
    for (const team of sides[side] as readonly number[]) {
      if (team < 0) continue
      table.played[team] = (table.played[team] as number) + 1
      const at = team * criteria
      table.sums[at] = (table.sums[at] as number) + points
      for (let c = 1; c < criteria; c++) {
        const brought =
          ranking.then[c - 1] === 'score'
            ? (scores[side] as number)
            : (played.criteria[(2 * record + side) * (criteria - 1) + c - 1] as number)
        table.sums[at + c] = (table.sums[at + c] as number) + brought
      }
    }
  }
  return {
    sign: own === 0 ? sign : -sign,
    bonuses: [played.bonuses[2 * record + own] as number, played.bonuses[2 * record + 1 - own] as number],
  }
}

/** How often each team had each rank, and its mean rank by draw. */
class Tally {
  private readonly counts: Uint32Array
  private readonly sums: Float64Array
  private readonly seasons: Float64Array
  private readonly squares: Float64Array
  private readonly teams: number
  private readonly draws: number

  constructor(teams: number, draws: number) {
    this.teams = teams
    this.draws = draws
    this.counts = new Uint32Array(teams * teams)
    this.sums = new Float64Array(teams * draws)
    this.squares = new Float64Array(teams)
    this.seasons = new Float64Array(draws)
  }

  add(order: Int32Array, draw: number): void {
    const { teams, draws, counts, sums, squares } = this
    this.seasons[draw] = (this.seasons[draw] as number) + 1
    for (let place = 0; place < teams; place++) {
      const team = order[place] as number
      counts[team * teams + place] = (counts[team * teams + place] as number) + 1
      sums[team * draws + draw] = (sums[team * draws + draw] as number) + place + 1
      squares[team] = (squares[team] as number) + (place + 1) ** 2
    }
  }

  report(names: readonly string[], seasons: number): TeamSeed[] {
    const { teams, counts } = this
    return names
      .map((team, k) => {
        const ranks = Array.from(counts.subarray(k * teams, (k + 1) * teams), (count) => count / seasons)
        const expected = ranks.reduce((sum, chance, place) => sum + chance * (place + 1), 0)
        return { team, expected, error: this.error(k, { expected, seasons }), ranks }
      })
      .sort((a, b) => a.expected - b.expected)
  }

  /** Seasons of one draw hang together, so that draws are what is counted, where there are several. */
  private error(team: number, { expected, seasons }: { expected: number; seasons: number }): number {
    const { draws, sums, squares } = this
    const used = this.seasons.filter((count) => count > 0).length
    if (used < 2) return Math.sqrt(Math.max(0, (squares[team] as number) / seasons - expected ** 2) / seasons)
    let sum = 0
    for (let d = 0; d < draws; d++) {
      const count = this.seasons[d] as number
      if (count > 0) sum += ((sums[team * draws + d] as number) / count - expected) ** 2
    }
    return Math.sqrt(sum / (used - 1) / used)
  }
}
