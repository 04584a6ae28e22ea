import type { Game } from '../../documents/types.ts'
import { type Doubt, doubtsOf } from '../doubts/index.ts'
import { usualOf } from '../observed/usual.ts'
import { seenByTeam } from '../seen/index.ts'
import { type SolvedTeam, solvedByCategory } from '../solved/index.ts'
import type { Change, Match, Observation, PitVisit, Result } from '../types.ts'
import type { EarlierEstimate } from './earlier.ts'
import { EventEstimates } from './event.ts'
import { defaultDiscount } from './settings.ts'
import { estimateOf, meanOfDraws } from './summary.ts'
import type { Estimate } from './types.ts'

/** What was seen of an event, with nothing stored anywhere. */
export interface EstimateRequest {
  game: Game
  matches: readonly Match[]
  /** In force, each about the team that it names. */
  observations: readonly Observation[]
  visits?: readonly PitVisit[] | undefined
  results?: readonly Result[] | undefined
  /** After so many own matches a match counts half; missing: all count alike. */
  halfLife?: number | undefined
  changes?: readonly Change[] | undefined
  /** Estimates of teams after an earlier event. */
  priors?: { readonly [team: string]: EarlierEstimate } | undefined
}

/** What is believed of one team, or of one that nobody has seen. Pieces and points of one match. */
export interface Believed {
  goals: { [goal: string]: { attempts: Estimate; success: Estimate; points: Estimate } }
  /** Null where no trip of the event was timed. `collecting`: mean seconds from a trip's start to its last piece collected. */
  trip: {
    time: { median: Estimate; within: Estimate }
    form: Estimate
    pieces: { [n: string]: Estimate }
    mix: { [goal: string]: Estimate }
    collecting: Estimate
  } | null
  finish: { [finish: string]: Estimate }
  auto: Estimate
  absent: Estimate
  stops: Estimate
  points: Estimate
}

export interface TeamReport extends Believed {
  team: string
  matches: number
  solved?: Estimate
  claimed?: PitVisit['claims']
}

export interface EstimateReport {
  teams: TeamReport[]
  prior: Believed
  doubts: Doubt[]
}

/** A name that no team has: it stands for one of which nothing is known. */
const nobody = ' nobody'

const whole = ({ mean, interval80, interval95, next80, ownWeight }: Estimate): Estimate => {
  return { mean, interval80, interval95, next80, ownWeight }
}

const times = (of: Estimate, factor: number): Estimate => ({
  mean: of.mean * factor,
  interval80: [of.interval80[0] * factor, of.interval80[1] * factor],
  interval95: [of.interval95[0] * factor, of.interval95[1] * factor],
  next80: null,
  ownWeight: of.ownWeight,
})

const each = <Of, To>(all: { [id: string]: Of }, of: (value: Of, id: string) => To): { [id: string]: To } =>
  Object.fromEntries(Object.entries(all).map(([id, value]) => [id, of(value, id)]))

function believed(event: EventEstimates, team: string): Believed {
  const { game, seen } = event.input
  const of = event.team(team)
  const draws = event.draws(team)
  const usual = usualOf(seen.get(team) ?? [], [...seen.values()].flat())
  const worth = (id: string) => {
    const award = game.goals.find((goal) => goal.id === id)?.award
    return award?.kind === 'each' ? award.teleop : 0
  }
  const { trip } = of
  return {
    goals: each(of.goals, ({ attempts, success, placed }, id) => {
      return { attempts: whole(attempts), success: whole(success), points: times(placed, worth(id)) }
    }),
    trip: trip && {
      time: { median: whole(trip.median), within: whole(trip.within) },
      form: whole(trip.form),
      pieces: Object.fromEntries(of.pieces.map((share, k) => [String(k + 1), whole(share)])),
      mix: Object.fromEntries(
        game.goals.map(({ id }, k) => {
          const share = draws.goals[k] as Float64Array
          return [
            id,
            whole(estimateOf(share, { ownWeight: of.goals[id]?.attempts.ownWeight ?? 0, mean: meanOfDraws(share) })),
          ]
        }),
      ),
      // The mean of a log-normal lies above its median.
      collecting: times(trip.median, usual.collecting * Math.exp(0.5 * Math.log(trip.within.mean) ** 2)),
    },
    finish: each(of.finish, whole),
    auto: whole(of.autonomousPoints),
    absent: whole(of.absent),
    stops: whole(of.stops),
    points: whole(of.points),
  }
}

const solvedAs = ({ mean, interval80, interval95, totals }: SolvedTeam): Estimate => {
  return { mean, interval80, interval95, next80: null, ownWeight: totals > 0 ? 1 : 0 }
}

/** Estimates of all teams that play or were seen, what is believed of one never seen, and which records to doubt. */
export function estimateReport(request: EstimateRequest): EstimateReport {
  const { game, matches, observations, visits = [], results = [], halfLife, changes = [], priors = {} } = request
  const watched = observations.map((observation) => ({ observation, team: observation.team }))
  const playing = matches.flatMap(({ red, blue }) => [...red, ...blue].map(({ team }) => team))
  const teams = [...new Set([...playing, ...watched.map(({ team }) => team), ...Object.keys(priors)])].sort()
  const claims = new Map(visits.map(({ team, claims: said }) => [team, said] as const))
  const event = new EventEstimates({
    game,
    teams: [...teams, nobody],
    seen: seenByTeam({ game, matches, watched, changes }),
    changes: new Map(teams.map((team) => [team, changes.filter((change) => change.team === team).length])),
    told: new Map(Object.entries(priors)),
    claims,
    weighing: { halfLife: halfLife ?? Number.POSITIVE_INFINITY, discount: defaultDiscount },
  })
  const solved = solvedByCategory(matches, results, teams).get('total')
  return {
    teams: teams.map((team): TeamReport => {
      const [own, said] = [solved?.teams.get(team), claims.get(team)]
      return {
        team,
        matches: event.team(team).matches,
        ...believed(event, team),
        ...(own && { solved: solvedAs(own) }),
        ...(said && { claimed: said }),
      }
    }),
    prior: believed(event, nobody),
    doubts: doubtsOf({ game, matches, results, watched }).doubts,
  }
}
