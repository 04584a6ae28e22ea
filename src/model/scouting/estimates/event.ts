import type { Game } from '../../documents/types.ts'
import type { TeamMatch } from '../seen/index.ts'
import type { PitVisit } from '../types.ts'
import { departures } from './departure.ts'
import { TeamDraws } from './draws.ts'
import { type EarlierEstimate, matchesWorth } from './earlier.ts'
import { EventPriors } from './priors.ts'
import { type Measures, measuresOf, type TeamData, teamData } from './teamData.ts'
import { EstimatesOfTeam } from './teamEstimate.ts'
import { noFinish, type TeamEstimate } from './types.ts'
import { type EarlierMatch, evenly, type Weighing, type Weighted, weighted } from './weights.ts'

export interface EstimateInput {
  game: Game
  /** All of the event, those that were never seen among them. */
  teams: readonly string[]
  seen: ReadonlyMap<string, readonly TeamMatch[]>
  /** Changes of robots at this event so far, those since their last match among them; as often as seen where it says nothing. */
  changes?: ReadonlyMap<string, number>
  earlier?: ReadonlyMap<string, readonly EarlierMatch[]>
  /** What was estimated of teams after an earlier event, where its matches are not at hand. */
  told?: ReadonlyMap<string, EarlierEstimate>
  claims?: ReadonlyMap<string, PitVisit['claims']>
  /** Seconds that one piece holds a goal, for goals that pay by the second; 0 where it says nothing. */
  holdSeconds?: { [goal: string]: number }
  weighing?: Weighing
}

/**
 * All teams of an event together: what is not known of one is taken from the others, as far as they are alike. What they
 * share is integrated over grids and not fixed at its likeliest value, which few matches would put anywhere.
 */
export class EventEstimates {
  readonly measures: Measures
  readonly priors: EventPriors
  readonly input: EstimateInput
  readonly weighing: Weighing
  private readonly weighted = new Map<string, readonly Weighted[]>()
  private readonly data = new Map<string, TeamData>()
  private readonly known = new Map<string, TeamEstimate>()
  private readonly drawn = new Map<string, TeamDraws>()

  constructor(input: EstimateInput) {
    this.input = input
    const { game, teams, seen, weighing = evenly } = input
    this.weighing = weighing
    const eraOf = (team: string) => input.changes?.get(team) ?? seen.get(team)?.at(-1)?.era ?? 0
    const matches = teams.map((team) => {
      const earlier = input.earlier?.get(team) ?? []
      const all = weighted(seen.get(team) ?? [], { earlier, era: eraOf(team), weighing })
      this.weighted.set(team, all)
      return all
    })
    const departing = departures(matches, game.clock.endgame)
    this.measures = measuresOf(game, noFinish, { teams: matches, departing })
    const all = teams.map((team, t) => {
      const claims = input.claims?.get(team)
      const told = input.told?.get(team)
      const worth = told ? matchesWorth(told, { own: matches[t]!.length, era: eraOf(team), weighing }) : 0
      const own = teamData(matches[t]!, this.measures, {
        ...{ departing: departing[t]!, claims },
        ...{ earlier: told?.estimate, worth },
      })
      this.data.set(team, own)
      return own
    })
    this.priors = new EventPriors(all, this.measures)
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
    const made = new TeamDraws(id, { data: this.dataOf(id), measures: this.measures, priors: this.priors })
    this.drawn.set(id, made)
    return made
  }

  /** Its matches with how much each counts, those of earlier events first. */
  weightedOf(id: string): readonly Weighted[] {
    return this.weighted.get(id) ?? []
  }

  /** @throws Error for a team that is not of the event */
  dataOf(id: string): TeamData {
    const data = this.data.get(id)
    if (!data) throw new Error(`${id} is not a team of this event`)
    return data
  }
}
