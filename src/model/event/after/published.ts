import type { Game } from '../../documents/types.ts'
import type { Alliance, EventRecord, Match, Observation, Phase, Result } from '../../scouting/types.ts'
import { inOrder } from '../order.ts'
import type { EventRanking } from '../ranking/types.ts'
import { slotsOf } from '../seats.ts'
import type { AfterReport } from './types.ts'

/** What was counted of one robot in one match: no opinion, and nobody's name. Means where several watched. */
export interface CountedRobot {
  match: string
  team: string
  /** How many watched it. */
  records: number
  goals: { goal: string; autonomous: number; teleop: number }[]
}

/** An event as it can be given to other teams. */
export interface PublishedEvent {
  format: 1
  published: 'event'
  event: { id: string; name: string; startsOn: string | null; teams: string[] }
  game: { id: string; name: string; revision: number; goals: { id: string; name: string }[] }
  matches: { id: string; phase: Phase; number: number; play: number; red: string[]; blue: string[] }[]
  results: { match: string; red: number; blue: number }[]
  ranking: { rank: number; team: string; played: number; won: number; tied: number; lost: number }[]
  counted: CountedRobot[]
  /** What we say of ourselves: trips by our design and as they were seen (s), and how our forecasts did. */
  own: {
    team: string
    trips: { seen: number; model: number; field: number } | null
    forecasts: { matches: number; expectedWins: number; wins: number; inside80: number } | null
  } | null
}

export interface PublishRequest {
  event: EventRecord
  game: Game
  revision: number
  matches: readonly Match[]
  results: readonly Result[]
  ranking: EventRanking
  watched: readonly { observation: Observation; team: string }[]
  /** Ours, where we say something of ourselves. */
  after: AfterReport | null
}

/**
 * What of an event can be given away: the schedule, official totals, the ranking, pieces that were counted, and what we say of ourselves.
 * Each field is named here one by one, so that nothing comes along that was added elsewhere: no estimates, forecasts or pick orders of others, no
 * doubts, notes, orders of driving or defence, and no names of people.
 */
export function publishedEvent(request: PublishRequest): PublishedEvent {
  const { event, game, revision, ranking, after } = request
  const voided = new Set(request.matches.flatMap(({ voids }) => voids ?? []))
  const matches = request.matches.filter(({ phase }) => phase !== 'practice').toSorted(inOrder)
  const teams = (match: Match, alliance: Alliance) =>
    slotsOf(match).flatMap((each) => (each.seat.alliance === alliance ? [each.slot.team] : []))
  return {
    format: 1,
    published: 'event',
    event: {
      id: event.id,
      name: event.name,
      startsOn: event.startsOn ?? null,
      teams: event.teams.map(({ team }) => team),
    },
    game: { id: game.id, name: game.name, revision, goals: game.goals.map(({ id, name }) => ({ id, name })) },
    matches: matches.map((match) => ({
      id: match.id,
      phase: match.phase,
      number: match.number,
      play: match.play,
      red: teams(match, 'red'),
      blue: teams(match, 'blue'),
    })),
    results: request.results
      .filter(({ match }) => !voided.has(match))
      .map(({ match, red, blue }) => ({ match, red: red.points.total, blue: blue.points.total })),
    ranking: ranking.rows
      .filter(({ played }) => played > 0)
      .map(({ rank, team, played, won, tied, lost }) => ({ rank, team, played, won, tied, lost })),
    counted: countedRobots(request, matches),
    own: after && ownSaid(after),
  }
}

function ownSaid({ team, field, forecasts }: AfterReport): PublishedEvent['own'] {
  return {
    team,
    trips: field && { seen: field.trips, model: field.model, field: field.seen },
    forecasts: forecasts && {
      matches: forecasts.matches,
      expectedWins: forecasts.expected,
      wins: forecasts.came,
      inside80: forecasts.inside80,
    },
  }
}

function countedRobots({ game, watched }: PublishRequest, matches: readonly Match[]): CountedRobot[] {
  const by = new Map<string, Observation[]>()
  for (const { observation, team } of watched) {
    if (observation.match === null || observation.subject !== 'robot' || observation.absent) continue
    const key = `${observation.match} ${team}`
    by.set(key, [...(by.get(key) ?? []), observation])
  }
  return matches.flatMap((match) =>
    slotsOf(match).flatMap(({ slot: { team } }): CountedRobot[] => {
      const records = by.get(`${match.id} ${team}`)
      if (!records) return []
      const mean = (goal: string, period: 'auto' | 'teleop') =>
        records.reduce((sum, record) => sum + placed(game, record, { goal, period }), 0) / records.length
      const goals = game.goals.map(({ id: goal }) => ({
        goal,
        autonomous: mean(goal, 'auto'),
        teleop: mean(goal, 'teleop'),
      }))
      return [{ match: match.id, team, records: records.length, goals }]
    }),
  )
}

function placed(
  { clock }: Game,
  { timeline = [], counts = [] }: Observation,
  { goal, period }: { goal: string; period: 'auto' | 'teleop' },
): number {
  // As `seenIn` has it: autonomous lasts until teleop begins.
  const teleop = clock.auto + clock.pause
  const tapped = timeline
    .filter(
      ({ what, goal: at, elapsed }) => what === 'scored' && at === goal && elapsed < teleop === (period === 'auto'),
    )
    .reduce((sum, { n = 1 }) => sum + n, 0)
  const counted = counts
    .filter((count) => count.goal === goal && count.period === period)
    .reduce((sum, { scored }) => sum + scored, 0)
  return tapped + counted
}
