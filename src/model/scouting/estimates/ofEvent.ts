import type { Game } from '../../documents/types.ts'
import type { EventRecords } from '../seen/byTeam.ts'
import { seenByTeam } from '../seen/index.ts'
import type { Change, PitVisit } from '../types.ts'
import { EventEstimates } from './event.ts'
import { type HalfLifeScore, halfLifeScores } from './halfLife.ts'
import { type MadeOfTeam, madeOf } from './made.ts'
import { defaultDiscount } from './settings.ts'
import { type SideBySide, sideBySide } from './sideBySide.ts'
import type { Estimate, TeamEstimate } from './types.ts'
import type { EarlierMatch } from './weights.ts'

/** What is recorded of an event, and of whom something is to be said. */
export interface EventInput extends EventRecords {
  teams: readonly string[]
  /** Oldest first: the last one of a team is what it says now. */
  visits: readonly PitVisit[]
  changes: readonly Change[]
  /** After so many own matches a match counts half; missing: all count alike. */
  halfLife?: number | undefined
  earlier?: EarlierEvent | undefined
  /** Seconds that one piece holds a goal, for goals that pay by the second; 0 where it says nothing. */
  holdSeconds?: { [goal: string]: number }
}

/** An earlier event of the same game: matches of a team there are own matches that lie before those of this one. */
export interface EarlierEvent extends Omit<EventRecords, 'game' | 'choices'> {
  /** What a match there counts here, 0 … 1. */
  discount: number
  /** Teams whose robot was changed between the two events: once more by the discount of a change. */
  changed: readonly string[]
}

/** The estimates of what is recorded. Choices among records have been made before. */
export function eventEstimates({
  teams,
  visits,
  changes,
  halfLife,
  earlier,
  holdSeconds,
  ...records
}: EventInput): EventEstimates {
  const known = new Set(teams)
  return new EventEstimates({
    game: records.game,
    teams,
    seen: seenByTeam({ ...records, changes }),
    changes: new Map(teams.map((team) => [team, changes.filter((change) => change.team === team).length])),
    ...(earlier && { earlier: matchesBefore(records.game, earlier) }),
    ...(holdSeconds && { holdSeconds }),
    weighing: {
      halfLife: halfLife ?? Number.POSITIVE_INFINITY,
      discount: defaultDiscount,
      ...(earlier && { earlier: earlier.discount }),
    },
    claims: new Map(visits.flatMap(({ team, claims }) => (known.has(team) ? [[team, claims] as const] : []))),
  })
}

/** Matches of an earlier event by team, each with how many changes and events ago it was. */
export function matchesBefore(game: Game, { changes = [], changed, ...records }: EarlierEvent) {
  const since = new Set(changed)
  return new Map(
    [...seenByTeam({ game, ...records, changes })].map(([team, matches]): [string, EarlierMatch[]] => {
      const last = changes.filter((change) => change.team === team).length + Number(since.has(team))
      return [team, matches.map((seen) => ({ seen, steps: 1 + last - seen.era }))]
    }),
  )
}

/** What is believed of each team, in the order of the teams. */
export function estimatesOfEvent(input: EventInput): TeamEstimate[] {
  const estimates = eventEstimates(input)
  return input.teams.map((team) => whole(estimates.team(team)))
}

/** The same of some of the event's teams. */
export function estimatesOfTeams(input: EventInput, teams: readonly string[]): TeamEstimate[] {
  const estimates = eventEstimates(input)
  return teams.map((team) => whole(estimates.team(team)))
}

/** What is recorded, without some of the records. */
export const withoutRecords = (input: EventInput, records: ReadonlySet<string>): EventInput => ({
  ...input,
  watched: input.watched.filter(({ observation }) => !records.has(observation.id)),
})

/** What each of some records changed: pieces tried as they would be believed without it, and as they are. */
export function changedBy(input: EventInput, records: readonly string[]): Changed[] {
  const now = eventEstimates(input)
  return records.flatMap((record): Changed[] => {
    const found = input.watched.find(({ observation }) => observation.id === record)
    if (!found || !input.teams.includes(found.team) || found.observation.match === null) return []
    const { team, observation } = found
    const before = eventEstimates(withoutRecords(input, new Set([record]))).team(team)
    const { attempts, matches } = now.team(team)
    return [{ record, match: observation.match!, team, without: before.attempts.mean, with: attempts.mean, matches }]
  })
}

export interface Changed {
  record: string
  match: string
  team: string
  /** Pieces tried a match. */
  without: number
  with: number
  /** Own matches behind the latter. */
  matches: number
}

/** What speaks for each half-life; null stands for none. */
export function halfLivesOf(input: EventInput): HalfLifeEvidence[] {
  return halfLifeScores(eventEstimates({ ...input, halfLife: undefined })).map(({ halfLife, ...score }) => {
    return { halfLife: Number.isFinite(halfLife) ? halfLife : null, ...score }
  })
}

export type HalfLifeEvidence = Omit<HalfLifeScore, 'halfLife'> & { halfLife: number | null }

/** What each team's numbers are made of. */
export function madeOfEvent(input: EventInput): { [team: string]: MadeOfTeam } {
  const estimates = eventEstimates(input)
  return Object.fromEntries(input.teams.map((team) => [team, madeOf(estimates, team)]))
}

/** Some teams side by side. */
export function sideBySideOf(input: EventInput, teams: readonly string[]): SideBySide {
  const { total, ...rest } = sideBySide(eventEstimates(input), teams)
  return { ...rest, total: total.map(one) }
}

/** A number as it can be sent. */
export const one = ({ mean, interval80, interval95, next80, ownWeight }: Estimate): Estimate => {
  return { mean, interval80, interval95, next80, ownWeight }
}

const each = <Of, To>(all: { [id: string]: Of }, of: (value: Of) => To): { [id: string]: To } =>
  Object.fromEntries(Object.entries(all).map(([id, value]) => [id, of(value)]))

/** All numbers of a team at once, as values that can be sent: they are computed when they are asked for. */
function whole(of: TeamEstimate): TeamEstimate {
  const { team, matches, neverSeen, trip, defence } = of
  return {
    ...{ team, matches, neverSeen, defence },
    attempts: one(of.attempts),
    points: one(of.points),
    goals: each(of.goals, ({ attempts, success, placed }) => {
      return { attempts: one(attempts), success: one(success), placed: one(placed) }
    }),
    trip: trip && { median: one(trip.median), within: one(trip.within), form: one(trip.form) },
    pieces: of.pieces.map(one),
    finish: each(of.finish, one),
    finishPoints: one(of.finishPoints),
    autonomous: each(of.autonomous, one),
    autonomousPoints: one(of.autonomousPoints),
    leaves: one(of.leaves),
    absent: one(of.absent),
    stops: one(of.stops),
    departs: one(of.departs),
  }
}
