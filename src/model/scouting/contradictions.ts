import type { Game } from '../documents/types.ts'
import { seatOf } from '../event/seats.ts'
import type { Alliance, Match, Observation } from './types.ts'

/** An observation in force, with whom it is about by the schedule as it is now. */
export interface Watched {
  observation: Observation
  team: string
}

/** Why records can not all be right. What each says in words is the screen's business. */
export type Contradiction = {
  /** Ids of the records. */
  records: string[]
  match: string | null
  team: string | null
} & (
  | { kind: 'moreThanCollected'; out: number; in: number }
  | { kind: 'overCapacity'; goal: string; scored: number; capacity: number; alliance: Alliance }
  | { kind: 'finishFull'; finish: string; robots: number; slots: number; alliance: Alliance }
  | { kind: 'absentButSeen' }
  | { kind: 'afterStop'; elapsed: number; stopped: number }
  | { kind: 'outsideMatch'; elapsed: number; end: number }
  | { kind: 'scoutsDiffer'; goal: string; low: number; high: number }
  | { kind: 'sameScoutTwice'; scout: string }
  | { kind: 'notInMatch' }
  | { kind: 'unknownMatch' }
)

export interface Bounds {
  /** Pieces by which two scouts of one robot may differ at a goal, and that a robot may have begun with. */
  pieces?: number
  /** Seconds by which a press may come late, or a clock be off. */
  seconds?: number
}

const actions = new Set(['collected', 'scored', 'missed', 'dropped', 'passed', 'defending', 'left'])
const leaving = new Set(['scored', 'missed', 'dropped', 'passed'])

/** Pieces that an observation has scored, by goal; null where it does not say. */
export function scoredIn({ timeline, counts }: Observation): Map<string, number> | null {
  if (!timeline && !counts) return null
  const scored = new Map<string, number>()
  const add = (goal: string, n: number) => scored.set(goal, (scored.get(goal) ?? 0) + n)
  for (const { what, goal, n = 1 } of timeline ?? []) if (what === 'scored' && goal) add(goal, n)
  for (const { goal, scored: n } of counts ?? []) add(goal, n)
  return scored
}

/**
 * Records that contradict each other or what is possible. Each is told and none is dropped: a scout may have seen what the
 * rules did not foresee. Observations of human players and of runs outside of matches are looked at for themselves only.
 */
export function contradictions(
  { game, matches }: { game: Game; matches: ReadonlyMap<string, Match> },
  watched: readonly Watched[],
  { pieces = 3, seconds = 5 }: Bounds = {},
): Contradiction[] {
  const { auto, pause, teleop } = game.clock
  const end = auto + pause + teleop
  const alone = watched.flatMap((each) => ofOne(each, { end, pieces, seconds, matches }))
  const robots = watched.filter(({ observation }) => observation.subject === 'robot' && observation.match !== null)
  const byMatch = groups(robots, ({ observation }) => observation.match!)
  const together = [...byMatch].flatMap(([id, records]) => [
    ...differing(id, records, pieces),
    ...(matches.has(id) ? ofAlliances(game, matches.get(id)!, records) : []),
  ])
  return [...alone, ...together]
}

function ofOne(
  { observation, team }: Watched,
  of: { end: number; pieces: number; seconds: number; matches: ReadonlyMap<string, Match> },
): Contradiction[] {
  const { end, pieces, seconds, matches } = of
  const { id, match, timeline = [], absent, counts = [], finish, stoppedAt } = observation
  const about = { records: [id], match, team }
  const found: Contradiction[] = []
  const known = match === null ? undefined : matches.get(match)
  if (match !== null && !known) found.push({ ...about, kind: 'unknownMatch' })
  if (known && seatOf(known, team) === null) found.push({ ...about, kind: 'notInMatch' })
  const did = timeline.some(({ what }) => actions.has(what)) || counts.some(({ scored }) => scored > 0)
  if (absent && (did || (finish?.achieved ?? null) !== null)) found.push({ ...about, kind: 'absentButSeen' })
  const outside = timeline.find(({ elapsed }) => elapsed < -seconds || elapsed > end + seconds)
  if (outside) found.push({ ...about, kind: 'outsideMatch', elapsed: outside.elapsed, end })
  const balance = takenAndGiven(timeline, pieces)
  if (balance && balance.out > balance.in) found.push({ ...about, kind: 'moreThanCollected', ...balance })
  const after = afterStop(timeline, stoppedAt, seconds)
  if (after) found.push({ ...about, kind: 'afterStop', ...after })
  return found
}

/**
 * Pieces from the first one collected on; what went before is what the robot began with. Null where the record is not
 * complete: somebody looked away, or estimated. Null too where the robot had given nothing away before it collected, and may
 * still hold as many as it gave too many.
 *
 * @param begun pieces that a robot may have begun with
 */
function takenAndGiven(
  timeline: NonNullable<Observation['timeline']>,
  begun: number,
): { in: number; out: number } | null {
  const first = timeline.findIndex(({ what }) => what === 'collected')
  if (first < 0 || timeline.some(({ what, counted }) => what === 'unseen' || counted === 'estimate')) return null
  const seen = timeline.slice(first)
  const sum = (of: (what: string) => boolean) =>
    seen.filter(({ what }) => of(what)).reduce((total, { n = 1 }) => total + n, 0)
  const balance = { in: sum((what) => what === 'collected'), out: sum((what) => leaving.has(what)) }
  const mayHold = timeline.slice(0, first).every(({ what }) => !leaving.has(what))
  return mayHold && balance.out - balance.in <= begun ? null : balance
}

/** The first thing that a robot did while it was stopped. */
function afterStop(
  timeline: NonNullable<Observation['timeline']>,
  stoppedAt: number | undefined,
  seconds: number,
): { elapsed: number; stopped: number } | null {
  let stopped: number | null = null
  for (const { what, elapsed } of timeline) {
    if (what === 'stopped') stopped ??= elapsed
    else if (what === 'running') stopped = null
    else if (stopped !== null && actions.has(what) && elapsed > stopped) return { elapsed, stopped }
  }
  if (stoppedAt === undefined || timeline.some(({ what }) => what === 'running')) return null
  const late = timeline.find(({ what, elapsed }) => actions.has(what) && elapsed > stoppedAt + seconds)
  return late ? { elapsed: late.elapsed, stopped: stoppedAt } : null
}

function differing(match: string, records: readonly Watched[], pieces: number): Contradiction[] {
  return [...groups(records, ({ team }) => team)].flatMap(([team, same]): Contradiction[] => {
    if (same.length < 2) return []
    const about = { records: same.map(({ observation }) => observation.id), match, team }
    const scouts = [...groups(same, ({ observation }) => observation.scout)]
    const twice = scouts
      .filter(([, of]) => of.length > 1)
      .map(([scout, of]): Contradiction => {
        return { ...about, records: of.map(({ observation }) => observation.id), kind: 'sameScoutTwice', scout }
      })
    const counted = same.map(({ observation }) => scoredIn(observation)).filter((each) => each !== null)
    const goals = new Set(counted.flatMap((each) => [...each.keys()]))
    const differ = [...goals].flatMap((goal): Contradiction[] => {
      const numbers = counted.map((each) => each.get(goal) ?? 0)
      const low = Math.min(...numbers)
      const high = Math.max(...numbers)
      return high - low > pieces ? [{ ...about, kind: 'scoutsDiffer', goal, low, high }] : []
    })
    return [...twice, ...differ]
  })
}

/** Of several records of one robot the one that says least, so that only what no choice of them can mend is told. */
function ofAlliances(game: Game, match: Match, records: readonly Watched[]): Contradiction[] {
  const byAlliance = groups(
    records.filter(({ team }) => seatOf(match, team) !== null),
    ({ team }) => seatOf(match, team)!.alliance,
  )
  return [...byAlliance].flatMap(([alliance, own]) => {
    const robots = [...groups(own, ({ team }) => team).values()]
    const ids = own.map(({ observation }) => observation.id)
    const about = { records: ids, match: match.id, team: null, alliance }
    const goals = game.goals.flatMap(({ id: goal, capacity }): Contradiction[] => {
      const least = (robot: readonly Watched[]) =>
        Math.min(...robot.map(({ observation }) => scoredIn(observation)?.get(goal) ?? 0))
      const scored = robots.reduce((sum, robot) => sum + least(robot), 0)
      return capacity !== null && scored > capacity ? [{ ...about, kind: 'overCapacity', goal, scored, capacity }] : []
    })
    const finishes = game.finishes.flatMap(({ id: finish, slots }): Contradiction[] => {
      const there = robots.filter((robot) => robot.every(({ observation }) => observation.finish?.achieved === finish))
      return there.length > slots ? [{ ...about, kind: 'finishFull', finish, robots: there.length, slots }] : []
    })
    return [...goals, ...finishes]
  })
}

function groups<T, Key>(list: readonly T[], keyOf: (each: T) => Key): Map<Key, T[]> {
  const found = new Map<Key, T[]>()
  for (const each of list) {
    const key = keyOf(each)
    found.set(key, [...(found.get(key) ?? []), each])
  }
  return found
}
