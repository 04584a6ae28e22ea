import type { Game, Option, Point } from '../../../src/model/documents/types.ts'
import { placeOf } from '../../../src/model/field/places.ts'
import { symmetricImage } from '../../../src/model/field/symmetry.ts'
import type { Both, MatchEvent, Timeline } from '../../../src/model/match/types.ts'
import type { Lineup, Way } from '../../worker/protocol.ts'
import { pointsAt } from './replayPoints.ts'

/** What a robot is at, in the moment that is shown. */
export type Doing = 'absent' | 'autonomous' | 'ready' | 'done' | Exclude<MatchEvent['kind'], Counted>

/** What only counts, and says nothing of what a robot is at. */
type Counted = 'leaves' | 'fouls'

export interface RobotMoment {
  /** On the field as ours see it (m). */
  at: Point
  doing: Doing
  /** The place that it drives to, waits at or works at. */
  place: string | null
  load: number
}

export interface Moment {
  robots: RobotMoment[]
  /** Pieces on each goal so far. */
  pieces: Both<{ [goal: string]: number }>
  /** All points so far; fouls, bonuses and adjustments come at the end. */
  points: Both<number>
}

/** A match ready to be shown at any moment. */
export interface Reel {
  game: Game
  options: Option[]
  timeline: Timeline
  ways: readonly { [fromTo: string]: Way }[]
  byRobot: MatchEvent[][]
  /** Elapsed seconds at the end. */
  end: number
}

export function reelOf(
  game: Game,
  lineup: Lineup,
  of: { timeline: Timeline; ways: readonly { [fromTo: string]: Way }[] },
): Reel {
  const { auto, pause, teleop } = game.clock
  return {
    game,
    options: [...lineup.ours, ...lineup.theirs],
    ...of,
    byRobot: [0, 1, 2, 3, 4, 5].map((robot) => of.timeline.events.filter((event) => event.robot === robot)),
    end: auto + pause + teleop,
  }
}

const sideOf = (robot: number): 'ours' | 'theirs' => (robot < 3 ? 'ours' : 'theirs')

/** Everything that a replay shows at an elapsed time (s). */
export function momentOf(reel: Reel, time: number): Moment {
  const { game, timeline } = reel
  const robots = reel.options.map((_, robot) => robotAt(reel, robot, time))
  const counts = () => Object.fromEntries(game.goals.map(({ id }) => [id, 0]))
  const pieces = { ours: counts(), theirs: counts() }
  for (const event of timeline.events) {
    if (event.at > time) break
    if (event.kind === 'places') pieces[sideOf(event.robot)][event.place]!++
  }
  return { robots, pieces, points: pointsAt(reel, time, pieces) }
}

function robotAt({ game, options, timeline, ways, byRobot }: Reel, robot: number, time: number): RobotMoment {
  const option = options[robot]!
  const onField = (point: Point): Point => (robot < 3 ? point : symmetricImage(game.field, point))
  const auto = option.robot.autos.find(({ id }) => id === option.auto)
  const start = placeOf(game, option.start)?.at ?? [0, 0]
  if (!timeline.played[robot]) return { at: onField(start), doing: 'absent', place: null, load: 0 }
  const past = byRobot[robot]!.filter(isAct).filter(({ at }) => at <= time)
  const stopped = past.find(({ kind }) => kind === 'stops')
  const clock = stopped ? stopped.at : time
  const drive = past.findLast((event) => event.kind === 'drives')
  // What happens in autonomous is its routine, which the timeline tells by its pieces alone.
  if (!drive) {
    const ending = auto ? (ways[robot]?.[`${option.start}>${auto.endsAt}`] ?? []) : []
    const at = alongRoutine(auto?.path, clock) ?? along(ending, clock / game.clock.auto) ?? start
    const doing = stopped ? 'stops' : time < game.clock.auto ? 'autonomous' : (past.at(-1)?.kind ?? 'ready')
    return { at: onField(at), doing: doing === 'places' ? 'ready' : doing, place: null, load: 0 }
  }
  const way = ways[robot]?.[`${drive.from}>${drive.to}`] ?? []
  const at = along(way, (clock - drive.at) / Math.max(1e-9, drive.until - drive.at)) ?? start
  const last = past.findLast(({ kind }) => kind !== 'places') ?? drive
  return { at: onField(at), ...doingAt(last, drive), load: loadAt(past) }
}

type Act = Exclude<MatchEvent, { kind: Counted }>

const isAct = (event: MatchEvent): event is Act => event.kind !== 'leaves' && event.kind !== 'fouls'

function doingAt(last: Act, drive: MatchEvent & { kind: 'drives' }): Pick<RobotMoment, 'doing' | 'place'> {
  const place = 'place' in last ? last.place : drive.place
  return { doing: last.kind === 'finishes' ? 'done' : last.kind, place }
}

/** Pieces in hand: what the last drive began with, less those placed since, or what was taken in by the next drive. */
function loadAt(past: readonly MatchEvent[]): number {
  const from = past.findLastIndex(({ kind }) => kind === 'drives')
  const drive = past[from]
  if (drive?.kind !== 'drives') return 0
  return Math.max(0, drive.load - past.slice(from).filter(({ kind }) => kind === 'places').length)
}

/** A point of a line at a share of its length; null where there is no line. */
export function along(way: Way, share: number): Point | null {
  const first = way[0]
  if (!first) return null
  const lengths = way.slice(1).map((point, index) => Math.hypot(point[0] - way[index]![0], point[1] - way[index]![1]))
  let left = Math.min(1, Math.max(0, share)) * lengths.reduce((sum, length) => sum + length, 0)
  for (const [index, length] of lengths.entries()) {
    if (left <= length) return between(way[index]!, way[index + 1]!, length > 0 ? left / length : 1)
    left -= length
  }
  return way.at(-1)!
}

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
]

/** Where a drawn routine has the robot: its points are [s, x, y]. */
function alongRoutine(path: readonly [number, number, number][] | undefined, time: number): Point | null {
  if (!path || path.length === 0) return null
  const next = path.findIndex(([at]) => at >= time)
  if (next < 0) return path.at(-1)!.slice(1) as Point
  const [after, before] = [path[next]!, path[next - 1]]
  if (!before) return after.slice(1) as Point
  return between(
    [before[1], before[2]],
    [after[1], after[2]],
    after[0] > before[0] ? (time - before[0]) / (after[0] - before[0]) : 1,
  )
}
