import type { Game } from '../../documents/types.ts'
import { stratified } from '../../random/index.ts'
import type { TeamMatch } from '../seen/index.ts'
import type { PitVisit } from '../types.ts'
import { Chances } from './chances.ts'
import { departures } from './departure.ts'
import { TeamDraws } from './draws.ts'
import { Named } from './pool.ts'
import { Rates } from './rates.ts'
import { drawCount, hyperpriors } from './settings.ts'
import { Shares } from './shares.ts'
import { type Measures, measuresOf, type TeamData, teamData } from './teamData.ts'
import { EstimatesOfTeam } from './teamEstimate.ts'
import { type TripPrior, Trips } from './trips.ts'
import { noFinish, type TeamEstimate } from './types.ts'
import { type EarlierMatch, evenly, type Weighing, weighted } from './weights.ts'

export interface EstimateInput {
  game: Game
  /** All of the event, those that were never seen among them. */
  teams: readonly string[]
  seen: ReadonlyMap<string, readonly TeamMatch[]>
  /** Changes of robots at this event so far, those since their last match among them; as often as seen where it says nothing. */
  changes?: ReadonlyMap<string, number>
  earlier?: ReadonlyMap<string, readonly EarlierMatch[]>
  claims?: ReadonlyMap<string, PitVisit['claims']>
  /** Seconds that one piece holds a goal, for goals that pay by the second; 0 where it says nothing. */
  holdSeconds?: { [goal: string]: number }
  weighing?: Weighing
}

/** Draws of what all teams share: one each of every part, the same draw belonging together. */
export interface EventPriors {
  rates: { shape: Float64Array; rate: Float64Array }
  goals: Float64Array[]
  success: { a: Float64Array; b: Float64Array }[]
  pieces: Float64Array[]
  finish: Float64Array[]
  autonomous: Float64Array[][]
  absent: { a: Float64Array; b: Float64Array }
  stops: { a: Float64Array; b: Float64Array }
  leaves: { a: Float64Array; b: Float64Array }
  trips: TripPrior[]
}

/**
 * All teams of an event together: what is not known of one is taken from the others, as far as they are alike. What they
 * share is integrated over grids and not fixed at its likeliest value, which few matches would put anywhere.
 */
export class EventEstimates {
  readonly measures: Measures
  readonly rates: Rates
  readonly trips: Trips
  readonly input: EstimateInput
  private readonly data = new Map<string, TeamData>()
  private readonly known = new Map<string, TeamEstimate>()
  private readonly drawn = new Map<string, TeamDraws>()
  private readonly parts
  private priorDraws: EventPriors | null = null

  constructor(input: EstimateInput) {
    this.input = input
    const { game, teams, seen, weighing = evenly } = input
    const matches = teams.map((team) => {
      const own = seen.get(team) ?? []
      const era = input.changes?.get(team) ?? own.at(-1)?.era ?? 0
      return weighted(own, { earlier: input.earlier?.get(team) ?? [], era, weighing })
    })
    const departing = departures(matches, game.clock.endgame)
    this.measures = measuresOf(game, noFinish, { teams: matches, departing })
    const all = teams.map((team, t) => {
      const claims = input.claims?.get(team)
      const own = teamData(matches[t]!, this.measures, { departing: departing[t]!, claims })
      this.data.set(team, own)
      return own
    })
    this.rates = new Rates(all.map(({ attempts }) => attempts))
    this.trips = new Trips(all.map(({ trips }) => trips))
    const { goals, finishes, mostPerTrip, mostInAuto } = this.measures
    const shares = (
      count: number,
      of: (data: TeamData) => Float64Array,
      prior: ConstructorParameters<typeof Shares>[2],
    ) => new Shares(count, all.map(of), prior)
    this.parts = {
      goals: shares(goals.length, (each) => each.goals, hyperpriors.goals),
      pieces: shares(mostPerTrip, (each) => each.pieces, hyperpriors.pieces),
      finish: shares(finishes.length, (each) => each.finish, hyperpriors.finish),
      autonomous: goals.map((_, k) => shares(mostInAuto + 1, (each) => each.autonomous[k]!, hyperpriors.autonomous)),
      success: goals.map(
        (_, k) =>
          new Chances(
            all.map(({ success }) => success[k]!),
            hyperpriors.success,
          ),
      ),
      absent: new Chances(
        all.map(({ absent }) => absent),
        hyperpriors.rare,
      ),
      stops: new Chances(
        all.map(({ stops }) => stops),
        hyperpriors.rare,
      ),
      leaves: new Chances(
        all.map(({ leaves }) => leaves),
        hyperpriors.leaving,
      ),
    }
  }

  /** What is estimated of a team. */
  team(id: string): TeamEstimate {
    const known = this.known.get(id)
    if (known) return known
    const made = new EstimatesOfTeam(this, id)
    this.known.set(id, made)
    return made
  }

  /** Draws from what is believed of a team: draw d of all teams belongs to one state of the event. */
  draws(id: string): TeamDraws {
    const known = this.drawn.get(id)
    if (known) return known
    const made = new TeamDraws(id, {
      data: this.dataOf(id),
      measures: this.measures,
      priors: this.priors,
      trips: this.trips,
    })
    this.drawn.set(id, made)
    return made
  }

  /** @throws Error for a team that is not of the event */
  dataOf(id: string): TeamData {
    const data = this.data.get(id)
    if (!data) throw new Error(`${id} is not a team of this event`)
    return data
  }

  get priors(): EventPriors {
    this.priorDraws ??= this.makePriors()
    return this.priorDraws
  }

  private makePriors(): EventPriors {
    const { parts } = this
    let stream = 0
    const levels = () => stratified(drawCount, 7, stream++)
    const chances = (of: Chances) => {
      const u = levels()
      const drawn = Array.from(u, (level) => of.prior(level))
      return { a: Float64Array.from(drawn, ({ a }) => a), b: Float64Array.from(drawn, ({ b }) => b) }
    }
    const shares = (of: Shares, name: string) => {
      const u = levels()
      const named = Array.from({ length: of.categories }, (_, k) => new Named(`event ${name} ${k}`))
      return Array.from(u, (level, d) => of.prior(level, named, d))
    }
    const rates = Array.from(levels(), (u) => this.rates.prior(u))
    const level = new Named('event trips')
    return {
      rates: {
        shape: Float64Array.from(rates, ({ shape }) => shape),
        rate: Float64Array.from(rates, ({ rate }) => rate),
      },
      goals: shares(parts.goals, 'goals'),
      pieces: shares(parts.pieces, 'pieces'),
      finish: shares(parts.finish, 'finish'),
      autonomous: parts.autonomous.map((part, k) => shares(part, `autonomous ${k}`)),
      success: parts.success.map(chances),
      absent: chances(parts.absent),
      stops: chances(parts.stops),
      leaves: chances(parts.leaves),
      trips: Array.from(levels(), (u, d) => this.trips.prior(u, level.normal(d))),
    }
  }
}
