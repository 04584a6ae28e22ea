import {
  arrivals,
  type Candidate,
  type Contradiction,
  chosenRecords,
  contradictions,
  counts,
  currentRecords,
  type EventRecord,
  type MatchArrivals,
  matchOf,
  type Watched,
} from '../../model/scouting/index.ts'
import type { StoredMatch } from '../../store/types.ts'
import { notFound, read, type Stored } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import { resolved } from './resolved.ts'

export type Resolved = ReturnType<typeof resolved>[number]

/** What follows from an event's records, schedule, results and seats. */
export interface Known {
  records: readonly Resolved[]
  /** Those that no other has taken the place of. */
  inForce: readonly Resolved[]
  /** Which record of a robot counts alone, by `inMatch`. */
  chosen: ReadonlyMap<string, string>
  matches: readonly MatchArrivals[]
  contradictions: readonly Contradiction[]
  /** The state of affairs that all this follows from. */
  at: Stood
}

/** Marks of a state of affairs: each is another after a change of what it is of. */
export interface Stood {
  /** Arrival of the newest record. */
  newest: number
  /** Schedule, teams and rules: what is said under others is of something else. */
  frame: string
  /** Results, seats, choices, and the earlier event that counts here. */
  rest: string
}

export const candidateOf = ({ row, team }: Resolved): Candidate => ({ id: row.id, match: matchOf(row), team })

const observationsIn = (records: readonly Resolved[]) =>
  records.flatMap(({ row, team }) =>
    row.kind === 'observation' && team !== null ? [{ observation: row.body, team }] : [],
  )

interface Worked {
  known: Known
  /** What contradicts in each match, with what it was worked out from. */
  byMatch: ReadonlyMap<string | null, { from: string; told: readonly Contradiction[] }>
}

/** The last answer for each event whose records are kept; it goes with them. */
const worked = new WeakMap<object, Worked>()

/** Marks of an event that are others after every change of it, an earlier event left out; null where there is none. */
async function ownMarks(workspace: Context['workspace'], event: string, after?: number) {
  const marks = await workspace.events.marks(event, after ?? workspace.records.logKept(event)?.newest ?? 0)
  if (!marks) return null
  const body = marks.body as EventRecord
  return { ...marks, body, frame: JSON.stringify([marks.frame, body.game, await workspace.newest('game', body.game)]) }
}

/** Where an event stands, without anything of it being read whole: `records` came after `newest`, else after those that are kept. Null where there is none. */
export async function standsAt(workspace: Context['workspace'], { event, newest }: { event: string; newest?: number }) {
  const own = await ownMarks(workspace, event, newest)
  if (!own) return null
  const { frame, since: records, body } = own
  // An earlier event that counts here is known by its own marks; what that one takes from a still earlier one is not taken along.
  const past = body.earlier ? await ownMarks(workspace, body.earlier.event) : null
  const rest = past ? JSON.stringify([own.rest, past.frame, past.rest, past.newest]) : own.rest
  return { frame, rest, records, body }
}

/**
 * What is known of an event now. It is worked out once for the same records, schedule, results, seats, choices and game, however
 * many boards ask: each of these has a mark that is another after every change.
 */
export async function knownOf({ workspace }: Pick<Context, 'workspace'>, event: string) {
  const { records: store, events } = workspace
  // Behind the marks: what is newer than they are is read anew with the next ones.
  const state = await standsAt(workspace, { event })
  if (!state) throw notFound('event', { id: event })
  const log = await store.log(event)
  const at: Stood = { newest: log.newest, frame: state.frame, rest: state.rest }
  const before = worked.get(log.of)
  if (before && same(before.known.at, at)) return { log, known: before.known }

  const game = await read(workspace, 'game', { id: state.body.game })
  const { matches: stored } = await events.matches(event)
  const results = await events.results(event)
  const { assignments } = await events.assignments(event)
  const choices = await store.choices(event)
  const matches = stored.map(({ match }) => match)
  const byId = new Map(matches.map((match) => [match.id, match]))
  const records = resolved(log.records, byId)
  const inForce = currentRecords(records)
  const chosen = chosenRecords(choices, records, inForce.map(candidateOf))
  const counted = new Set(results.flatMap(({ match, result }) => (result ? [match] : [])))
  // What a lead decided not to count contradicts nothing any more; it has arrived all the same.
  const counting = observationsIn(inForce.filter((record) => counts(candidateOf(record), chosen)))
  const told = game ? contradictionsByMatch({ game, stored }, counting, before?.byMatch) : new Map()
  const known: Known = {
    records,
    inForce,
    chosen,
    matches: arrivals({ matches, assignments, records: observationsIn(inForce), counted }),
    contradictions: [...told.values()].flatMap((each) => each.told),
    at,
  }
  worked.set(log.of, { known, byMatch: told })
  return { log, known }
}

const same = (one: Stood, other: Stood) =>
  one.newest === other.newest && one.frame === other.frame && one.rest === other.rest

/** Match by match in the order of play, then what is of no match: only matches that something is new of are looked at again. */
function contradictionsByMatch(
  { game, stored }: { game: Stored<'game'>; stored: readonly StoredMatch[] },
  watched: readonly Watched[],
  before: Worked['byMatch'] | undefined,
) {
  const matches = new Map(stored.map(({ match }) => [match.id, match]))
  const revisions = new Map(stored.map(({ match, revision }) => [match.id, revision]))
  const by = new Map<string | null, Watched[]>(stored.map(({ match }) => [match.id, []]))
  for (const each of watched) {
    const { match } = each.observation
    const own = by.get(match)
    if (own) own.push(each)
    else by.set(match, [each])
  }
  return new Map(
    [...by].map(([match, own]) => {
      const ids = own.map(({ observation, team }) => [observation.id, team])
      const from = JSON.stringify([game.id, game.revision, match !== null && revisions.get(match), ids])
      const kept = before?.get(match)
      if (kept?.from === from) return [match, kept] as const
      return [match, { from, told: contradictions({ game: game.body, matches }, own) }] as const
    }),
  )
}
