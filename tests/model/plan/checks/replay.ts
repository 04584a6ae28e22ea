import type {
  CollectTrip,
  Duration,
  FinishTrip,
  Game,
  Load,
  Option,
  ScoreEntry,
  Stage,
} from '../../../../src/model/documents/types.ts'
import { distributionOf } from '../../../../src/model/duration/index.ts'
import { travel } from '../../../../src/model/field/index.ts'
import type { Action, PlanReport } from '../../../../src/model/plan/types.ts'
import { Uniforms } from '../../../../src/model/random/index.ts'

export interface Played {
  points: number
  pieces: { [goal: string]: number }
  /** The finish that was begun. */
  finish: string | null
}

/**
 * Plays the printed policy in continuous time, leg by leg, one draw a stage, with nothing of the plan's own arithmetic.
 * For games without capacities (where the printed bands are the whole policy) and robots of form 1.
 */
export function replays(game: Game, option: Option, report: PlanReport, count: number, seed: number): Played[] {
  const { robot } = option
  const uniforms = new Uniforms(seed)
  const draws = new Map<Duration, (p: number) => number>()
  const drives = new Map<string, number>()
  const bands = new Map(report.policy.map(({ node, bands }) => [nodeKey(node.at, node.load), bands]))
  const pieceOf = new Map(game.sources.map((source) => [source.id, source.piece]))
  return Array.from({ length: count }, once)

  function once(): Played {
    const played: Played = {
      points: 0,
      pieces: Object.fromEntries(option.role.goals.map((goal) => [goal, 0])),
      finish: null,
    }
    played.points += option.adjust.reduce((sum, { points }) => sum + points, 0) + autonomous()
    const routine = robot.autos.find(({ id }) => id === option.auto)
    let at = routine ? routine.endsAt : option.start
    let load = routine ? routine.holding : robot.preload
    let left = game.clock.teleop
    for (;;) {
      const action = actionAt(at, load, left)
      if (action.kind === 'stop') return played
      if (action.kind === 'finish') {
        played.finish = action.finish
        const trip = robot.finish[action.finish]!
        const inTime = leg(trip, at, action.spot, 1).ends <= left
        if (inTime) played.points += finishPoints(action.finish, trip)
        return played
      }
      if (action.kind === 'collect') {
        const trip = robot.collect[action.source]!
        left -= leg(trip, at, action.spot, action.load).ends + retries(trip)
        load = { piece: pieceOf.get(action.source)!, count: action.load }
      } else {
        const entry = robot.score[action.goal]![action.entry]!
        const { ends, counts } = leg(entry, at, action.spot, load!.count)
        for (const elapsed of counts) if (elapsed <= left) place(played, action.goal, entry, left - elapsed)
        left -= ends
        load = null
      }
      if (left <= 0) return played
      at = action.spot
    }
  }

  function place(played: Played, goalId: string, entry: ScoreEntry, left: number) {
    if (uniforms.next() >= entry.success) return
    const { award } = game.goals.find(({ id }) => id === goalId)!
    played.pieces[goalId]! += 1
    played.points +=
      award.kind === 'each' ? award.teleop : award.teleopPerSecond * Math.min(option.holdSeconds[goalId] ?? 0, left)
  }

  function finishPoints(id: string, trip: FinishTrip): number {
    const reached = uniforms.next() < trip.success ? id : trip.otherwise
    return game.finishes.find((finish) => finish.id === reached)?.points ?? 0
  }

  function actionAt(at: string, load: Load | null, left: number): Action {
    const found = bands.get(nodeKey(at, load))
    if (!found) throw new Error(`the policy says nothing about ${nodeKey(at, load)}`)
    // The first band includes teleop's start.
    return found.find(({ to }) => left >= to - 1e-9)?.action ?? { kind: 'stop' }
  }

  function retries(trip: CollectTrip): number {
    let seconds = 0
    for (let n = 0; n < 20 && trip.retry && uniforms.next() >= trip.success; n++) seconds += draw(trip.retry)
    return seconds
  }

  function leg(trip: CollectTrip | ScoreEntry | FinishTrip, from: string, to: string, pieces: number) {
    if ('whole' in trip) {
      const ends = draw(trip.whole)
      return { ends, counts: Array<number>(pieces).fill(ends) }
    }
    const drive = driveSeconds(from, to) * draw(robot.drive.pace)
    const done = new Map<string, number[]>([['drive', [drive]]])
    const ready = (stage: Stage) => Math.max(0, ...stage.after.map((id) => done.get(id)!.at(-1)!))
    const open = [...trip.stages]
    while (open.length > 0) {
      const next = open.findIndex((stage) => stage.after.every((id) => done.has(id)))
      const [stage] = open.splice(next, 1)
      let clock = ready(stage!)
      done.set(
        stage!.id,
        Array.from({ length: stage!.each ? pieces : 1 }, () => {
          clock += draw(stage!.duration)
          return clock
        }),
      )
    }
    const ends = Math.max(...[...done.values()].map((times) => times.at(-1)!))
    const last = trip.stages.filter(({ id }) => !trip.stages.some(({ after }) => after.includes(id)))
    const counts = last.length === 1 && last[0]!.each ? done.get(last[0]!.id)! : Array<number>(pieces).fill(ends)
    return { ends, counts }
  }

  function autonomous(): number {
    const routine = robot.autos.find(({ id }) => id === option.auto)
    if (!routine) return 0
    let points = uniforms.next() < routine.leaves ? (game.leave?.points ?? 0) : 0
    let previous = true
    for (const step of routine.steps) {
      const hits = Array.from({ length: step.count }, () => uniforms.next() < step.success)
      const tried: boolean = previous || !step.needsPrevious
      previous = tried && hits.every((hit) => hit)
      const { award } = game.goals.find(({ id }) => id === step.goal)!
      if (award.kind === 'hold') throw new Error('routines of this check do not hold')
      if (tried) points += award.auto * hits.filter((hit) => hit).length
    }
    return points
  }

  function draw(duration: Duration): number {
    let quantile = draws.get(duration)
    if (!quantile) {
      quantile = quick(duration)
      draws.set(duration, quantile)
    }
    return quantile(uniforms.next())
  }

  function driveSeconds(from: string, to: string): number {
    const key = `${from}>${to}`
    let seconds = drives.get(key)
    if (seconds === undefined) {
      seconds = travel(game, robot, from, to).seconds
      drives.set(key, seconds)
    }
    return seconds
  }
}

/** A beta quantile is found by iteration: a table of 4,096 of them, read linearly, draws a thousand times as fast. */
function quick(duration: Duration): (p: number) => number {
  const { quantile } = distributionOf(duration)
  if (duration.kind !== 'range' || duration.low === duration.high) return quantile
  const last = 4096
  const table = Array.from({ length: last + 1 }, (_, i) =>
    i === 0 ? duration.low : i === last ? duration.high : quantile(i / last),
  )
  return (p) => {
    const i = Math.floor(p * last)
    return table[i]! + (p * last - i) * (table[i + 1]! - table[i]!)
  }
}

const nodeKey = (at: string, load: Load | null) => (load ? `${at}:${load.piece}:${load.count}` : at)
