import {
  arrivals,
  type Candidate,
  type Contradiction,
  chosenRecords,
  contradictions,
  counts,
  currentRecords,
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

/** What an event holds besides records, and marks that are others after every change of it; null where there is none. */
async function restOf(workspace: Context['workspace'], event: string) {
  const found = await read(workspace, 'event', { id: event })
  if (!found) return null
  const { records: store, events } = workspace
  const game = await read(workspace, 'game', { id: found.body.game })
  const { matches: stored, mark: schedule } = await events.matches(event)
  const results = await events.results(event)
  const { assignments, mark: seats } = await events.assignments(event)
  const choices = await store.choices(event)
  const entered = results.map(({ match, revision }) => [match, revision])
  // A revision of the event: which teams it has, how soon matches are forgotten, and which earlier event counts.
  const frame = JSON.stringify([schedule, game?.id, game?.revision, found.revision, found.removed])
  // Choices are only added, so that their number tells them apart.
  const rest = JSON.stringify([seats, entered, choices.length])
  return { found, game, stored, results, assignments, choices, frame, rest }
}

type Rest = NonNullable<Awaited<ReturnType<typeof restOf>>>

/** An earlier event that counts here is known by its own marks; what that one takes from a still earlier one is not taken along. */
async function withEarlier(workspace: Context['workspace'], { found, rest }: Rest): Promise<string> {
  const { earlier } = found.body
  const past = earlier && (await restOf(workspace, earlier.event))
  if (!past) return rest
  const { newest } = await workspace.records.log(earlier.event)
  return JSON.stringify([rest, past.frame, past.rest, newest])
}

/** Where an event stands, without its records being looked at: how many came after `newest`. Null where there is none. */
export async function standsAt(workspace: Context['workspace'], { event, newest }: { event: string; newest: number }) {
  const state = await restOf(workspace, event)
  if (!state) return null
  const rest = await withEarlier(workspace, state)
  return { frame: state.frame, rest, records: await workspace.records.since(event, newest) }
}

/**
 * What is known of an event now. It is worked out once for the same records, schedule, results, seats, choices and game, however
 * many boards ask: each of these has a mark of its own that is another after every change.
 */
export async function knownOf({ workspace }: Pick<Context, 'workspace'>, event: string) {
  const state = await restOf(workspace, event)
  if (!state) throw notFound('event', { id: event })
  const { game, stored, results, assignments, choices, frame } = state
  const rest = await withEarlier(workspace, state)
  const log = await workspace.records.log(event)
  const at: Stood = { newest: log.newest, frame, rest }
  const before = worked.get(log.of)
  if (before && same(before.known.at, at)) return { log, known: before.known }

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
