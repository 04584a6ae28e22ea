import type { Game } from '../../documents/types.ts'
import { Sums } from './fit.ts'
import { type Traits, TraitsOf } from './traits.ts'
import type { Pairing, Played, RatedTeam, Rating } from './types.ts'
import { type LeadRecords, WinTable } from './winTable.ts'

/** Simulated matches of some pairings, from which scores of any alliances are drawn. */
export interface Lot {
  pairing: Pairing
  played: Played
}

/** Parts that are left out in turn, for the error that the simulated matches bring in. */
export const groups = 10

interface Fitted {
  coefficients: Float64Array
  wins: WinTable
}

/**
 * The score-level sibling of the simulation, for any alliances of an event: scores are regressed on what is expected of their
 * robots, as far as there is room for it, and on who is expected to hold what pays by the second; what simulated
 * matches lay off that stays with them. A chance is then a look-up, so that thousands of alliances can be compared over the
 * same draws of what is not known.
 */
export class Sibling {
  readonly traits: TraitsOf
  readonly draws: number
  private readonly ratings: ReadonlyMap<string, Rating>
  private readonly whole: Fitted
  private readonly means = new Map<string, Rating>()
  private readonly rows: Rows
  private readonly all: Sums
  private readonly parts: readonly Sums[]
  /** The same with one part of the simulated matches left out; made when an error is asked for. */
  private readonly without: (Fitted | undefined)[] = []

  constructor(game: Game, teams: readonly RatedTeam[], lots: readonly Lot[]) {
    this.traits = new TraitsOf(game)
    this.ratings = new Map(teams.map(({ team, rating }) => [team, rating]))
    this.draws = teams[0]?.rating.points.length ?? 0
    const rows = rowsOf(this.traits, teams, lots)
    const all = new Sums(rows.width)
    const parts = Array.from({ length: groups }, () => new Sums(rows.width))
    for (let k = 0; k < rows.count; k++)
      for (const side of [0, 1]) {
        const row = rows.of(k, side)
        const score = rows.scores[2 * k + side] as number
        all.add(row, score)
        parts[k % groups]?.add(row, score)
      }
    this.whole = fittedBy(all.coefficients(), rows, -1)
    this.rows = rows
    this.all = all
    this.parts = parts
  }

  /** Traits of an alliance by common draw. */
  alliance(teams: readonly string[]): Traits {
    return this.traits.by(teams.map((team) => this.ratings.get(team) as Rating))
  }

  /** Traits of an alliance with one draw alone, at place 0. */
  at(teams: readonly string[], draw: number): Traits {
    const traits = this.traits.empty(1)
    this.traits.write(traits, 0, { members: teams.map((team) => this.rating(team)), draw: () => draw })
    return traits
  }

  /** Expected of an alliance at what is expected of its robots in the mean: quick, to tell alliances apart. */
  typical(teams: readonly string[]): number {
    const traits = this.traits.by(teams.map((team) => this.typically(team)))
    return traits.expected[0] as number
  }

  private typically(team: string): Rating {
    const known = this.means.get(team)
    if (known) return known
    const mean = (values: Float64Array) => Float64Array.of(values.reduce((sum, own) => sum + own, 0) / values.length)
    const { points, autonomous, goals, finishing, pieces, hits, finishes } = this.rating(team)
    const made: Rating = {
      points: mean(points),
      autonomous: mean(autonomous),
      goals: goals.map(mean),
      finishing: mean(finishing),
      pieces: pieces.map(mean),
      hits: hits.map(mean),
      finishes: finishes.map(mean),
    }
    this.means.set(team, made)
    return made
  }

  rating(team: string): Rating {
    return this.ratings.get(team) as Rating
  }

  /**
   * Chance that the first of two alliances wins, a tie half, by common draw.
   * @param without part of the simulated matches to leave out
   * @param every only each so-many-th draw
   */
  chances(ours: Traits, theirs: Traits, { without = -1, every = 1 } = {}): Float64Array {
    const { coefficients, wins } = without < 0 ? this.whole : this.leaving(without)
    const chances = new Float64Array(Math.ceil(ours.expected.length / every))
    const between = { ours, theirs, at: 0 }
    for (let d = 0; d < chances.length; d++) {
      between.at = d * every
      chances[d] = wins.chance(leadOf(this.traits, coefficients, between))
    }
    return chances
  }

  /** Expected score of an alliance against another, by common draw. */
  scores(ours: Traits, theirs: Traits): Float64Array {
    const { coefficients } = this.whole
    return Float64Array.from({ length: ours.expected.length }, (_, d) =>
      dot(coefficients, this.traits.row({ own: ours, other: theirs, at: d })),
    )
  }

  private leaving(group: number): Fitted {
    const known = this.without[group]
    if (known) return known
    const made = fittedBy(this.all.with(this.parts[group] as Sums, -1).coefficients(), this.rows, group)
    this.without[group] = made
    return made
  }
}

function leadOf(
  traits: TraitsOf,
  coefficients: Float64Array,
  { ours, theirs, at }: { ours: Traits; theirs: Traits; at: number },
): number {
  const lead = (coefficients[1] as number) * ((ours.expected[at] as number) - (theirs.expected[at] as number))
  if (traits.holds.length === 0) return lead
  return lead + (coefficients[2] as number) * (traits.holding(ours, theirs, at) - traits.holding(theirs, ours, at))
}

const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number)
  return sum
}

/** All simulated matches as rows of a regression, by what each robot was met with. */
export function rowsOf(traits: TraitsOf, teams: readonly Pick<RatedTeam, 'team' | 'met'>[], lots: readonly Lot[]) {
  const met = new Map(teams.map((team) => [team.team, team.met]))
  const count = lots.reduce((sum, { played }) => sum + played.scores.length / 2, 0)
  const [ours, theirs] = [traits.empty(count), traits.empty(count)]
  const scores = new Float64Array(2 * count)
  let at = 0
  for (const { pairing, played } of lots) {
    const sides = [pairing.ours, pairing.theirs].map((side) => side.map((team) => met.get(team) as Rating))
    const matches = played.scores.length / 2
    for (let k = 0; k < matches; k++)
      for (const [side, into] of [ours, theirs].entries())
        traits.write(into, at + k, {
          members: sides[side] as Rating[],
          draw: (member) => played.met[6 * k + 3 * side + member] as number,
        })
    scores.set(played.scores, 2 * at)
    at += matches
  }
  const width = 3
  const features = new Float64Array(2 * count * width)
  for (let k = 0; k < count; k++) {
    features.set(traits.row({ own: ours, other: theirs, at: k }), 2 * k * width)
    features.set(traits.row({ own: theirs, other: ours, at: k }), (2 * k + 1) * width)
  }
  const of = (k: number, side: number) => features.subarray((2 * k + side) * width, (2 * k + side + 1) * width)
  return { count, width, scores, of }
}

export type Rows = ReturnType<typeof rowsOf>

/** Leads of all matches but those of one part. */
function fittedBy(coefficients: Float64Array, rows: Rows, leftOut: number): Fitted {
  const kept = Array.from({ length: rows.count }, (_, k) => k).filter((k) => k % groups !== leftOut)
  const records: LeadRecords = {
    fitted: Float64Array.from(kept, (k) => dot(coefficients, rows.of(k, 0)) - dot(coefficients, rows.of(k, 1))),
    leads: Float64Array.from(kept, (k) => (rows.scores[2 * k] as number) - (rows.scores[2 * k + 1] as number)),
    whole: rows.scores.every(Number.isInteger),
  }
  return { coefficients, wins: new WinTable(records) }
}
