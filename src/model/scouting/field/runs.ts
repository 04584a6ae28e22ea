import type { Game } from '../../documents/types.ts'
import { inOrder } from '../../event/order.ts'
import { type View, viewsOf, watchOf } from '../seen/index.ts'
import { contains, intervalsOf } from '../seen/intervals.ts'
import type { Match, MatchDriver, Observation } from '../types.ts'

/** A match or a run of practice with the timed trips of each of its records. */
export interface Run {
  id: string
  kind: 'match' | 'practice'
  driver: string | null
  /** One record of the same run beside the other: each counts for its part. */
  records: Recorded[]
}

export interface Recorded {
  views: View[]
  /** Trips of it that end while the robot is defended. */
  defended: number
}

export interface Recordings {
  game: Pick<Game, 'clock'>
  matches: readonly Match[]
  /** Of one robot, in force and counting, in the order of arrival. */
  observations: readonly Observation[]
  /** Who drove this robot in matches, as somebody said who knows it. */
  drivers?: readonly Pick<MatchDriver, 'match' | 'driver'>[]
}

/**
 * A robot's runs in the order in which they were driven: records in the order of their arrival, matches among themselves in the
 * order of play. Practice of a match's phase counts as practice. Who drove is noted with practice, and of matches told apart from records.
 */
export function runsOf({ game, matches, observations, drivers = [] }: Recordings): Run[] {
  const byId = new Map(matches.map((match) => [match.id, match]))
  const drove = new Map(drivers.map(({ match, driver }) => [match, driver]))
  const runs = new Map<string, Run>()
  for (const observation of observations) {
    if (observation.subject !== 'robot') continue
    const recorded = recordedIn(game, observation)
    if (!recorded) continue
    const { id, match } = observation
    const driver = (match === null ? undefined : drove.get(match)) ?? observation.driver ?? null
    const key = match ?? id
    const run = runs.get(key)
    if (run) {
      run.records.push(recorded)
      run.driver ??= driver
      continue
    }
    const phase = match === null ? 'practice' : byId.get(match)?.phase
    if (phase === undefined) continue
    runs.set(key, { id: key, kind: phase === 'practice' ? 'practice' : 'match', driver, records: [recorded] })
  }
  return inOrderOfPlay([...runs.values()], byId)
}

function recordedIn(game: Pick<Game, 'clock'>, observation: Observation): Recorded | null {
  const watch = watchOf(game, observation)
  if (!watch) return null
  const views = viewsOf(watch)
  if (views.length === 0) return null
  const defended = intervalsOf(observation.timeline ?? [], 'defended', watch.play)
  const ends = views.flatMap(({ trips }) => trips.flatMap(({ placed }) => placed?.last.elapsed ?? []))
  return { views, defended: ends.filter((at) => contains(defended, at)).length }
}

/** Matches change places among themselves until they are in the order of play; practice stays where it is. */
function inOrderOfPlay(runs: readonly Run[], byId: ReadonlyMap<string, Match>): Run[] {
  const played = runs
    .filter(({ id }) => byId.has(id))
    .sort((a, b) => inOrder(byId.get(a.id) as Match, byId.get(b.id) as Match))
  let next = 0
  return runs.map((run) => (byId.has(run.id) ? (played[next++] as Run) : run))
}
