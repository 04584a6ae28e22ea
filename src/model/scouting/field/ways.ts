import type { Game, Robot } from '../../documents/types.ts'
import { ModelError } from '../../errors.ts'
import { LegBuilder, type LegSpec } from '../../leg/builder.ts'
import { convolve, meanOf, type Pmf, varianceOf } from '../../leg/pmf.ts'
import { TravelTimes } from '../../plan/travelTimes.ts'
import { attemptsOf } from '../seen/counted.ts'
import type { ViewedTrip } from '../seen/trips.ts'
import type { FieldLegRef, LeftOutReason } from './types.ts'

/** Grid of the times (s): two points to a scout's tenth. */
export const fineStep = 0.05

/** One half of a trip as the design does it. Times of form 1. */
export interface PredictedLeg {
  ref: FieldLegRef
  spec: LegSpec
  mean: number
  variance: number
  times: Pmf
}

/** A trip as the design does it. Times of form 1. */
export interface Way {
  key: string
  collect: PredictedLeg
  score: PredictedLeg
  times: Pmf
}

/**
 * How a design makes the trips that were seen. Spots are not recorded, or seldom: of all ways from one place to the next the robot
 * takes the one with most hits a second, as its plan would; where a placement was marked on the field, the spot next to it.
 */
export class Ways {
  private readonly game: Game
  private readonly robot: Robot
  private readonly builder = new LegBuilder(fineStep)
  private readonly seconds: (from: string, to: string) => number
  private readonly legs = new Map<string, PredictedLeg | null>()
  private readonly ways = new Map<string, Way | LeftOutReason>()

  constructor(game: Game, robot: Robot) {
    this.game = game
    this.robot = robot
    this.seconds = new TravelTimes().for(game, robot)
  }

  /** The design's way of a trip that ended, or why there is none. */
  of({ before, sources, placed }: ViewedTrip): Way | LeftOutReason {
    const goals = Object.keys(placed?.goals ?? {})
    const [source, ...others] = new Set(sources)
    if (others.length > 0 || goals.length > 1) return 'mixed'
    const [goal] = goals
    if (goal === undefined || before.goal === undefined) return 'noGoal'
    const load = attemptsOf(placed!.goals)
    const from = this.spotsOf(before.goal, before)
    const to = this.spotsOf(goal, placed!.last)
    const key = JSON.stringify([from, source, goal, to, load])
    let way = this.ways.get(key)
    if (way === undefined) {
      way = this.find({ from, source, goal, to, load }, key)
      this.ways.set(key, way)
    }
    return way
  }

  /** Whether the design collects where a trip that was cut off did. */
  canCollect = (sources: readonly string[]): boolean => sources.every((source) => this.robot.collect[source])

  private find(
    of: { from: string[]; source: string | undefined; goal: string; to: string[]; load: number },
    key: string,
  ): Way | LeftOutReason {
    const sources = this.game.sources.filter(({ id }) => of.source === undefined || id === of.source)
    const able = sources.filter(({ id }) => this.robot.collect[id])
    if (able.length === 0) return 'cannotCollect'
    const entries = this.robot.score[of.goal] ?? []
    if (entries.length === 0) return 'cannotScore'
    let most = 0
    let best: Way | LeftOutReason = able.every(({ piece }) => (this.robot.carries[piece] ?? 0) < of.load)
      ? 'tooMany'
      : 'noWay'
    for (const source of able) {
      if ((this.robot.carries[source.piece] ?? 0) < of.load) continue
      for (const [entry, { spots, success }] of entries.entries())
        for (const at of source.spots)
          for (const to of of.to) {
            if (spots !== 'any' && !spots.includes(to)) continue
            const score = this.leg({ kind: 'score', goal: of.goal, entry }, { from: at.id, to, load: of.load })
            for (const from of of.from) {
              const collect = this.leg({ kind: 'collect', source: source.id }, { from, to: at.id, load: of.load })
              if (!collect || !score) continue
              const hits = success / (collect.mean + score.mean)
              if (hits <= most) continue
              most = hits
              best = { key, collect, score, times: collect.times }
            }
          }
    }
    if (typeof best !== 'string') best = { ...best, times: convolve(best.collect.times, best.score.times) }
    return best
  }

  private leg(ref: FieldLegRef, { from, to, load }: { from: string; to: string; load: number }): PredictedLeg | null {
    const key = JSON.stringify([ref, from, to, load])
    let leg = this.legs.get(key)
    if (leg === undefined) {
      leg = this.predict(ref, { from, to, load })
      this.legs.set(key, leg)
    }
    return leg
  }

  /** Null where there is no way between the two. */
  private predict(ref: FieldLegRef, of: { from: string; to: string; load: number }): PredictedLeg | null {
    const { robot } = this
    const collect = ref.kind === 'collect' ? robot.collect[ref.source]! : null
    const trip = collect ?? robot.score[(ref as { goal: string }).goal]![(ref as { entry: number }).entry]!
    let drive: LegSpec['drive'] = null
    if (!('whole' in trip)) {
      try {
        drive = { seconds: this.seconds(of.from, of.to), pace: robot.drive.pace }
      } catch (error) {
        if (error instanceof ModelError && error.code === 'unreachable') return null
        throw error
      }
    }
    const tries = collect ? { tries: { success: collect.success, retry: collect.retry } } : {}
    const spec: LegSpec = { trip, drive, load: of.load, ...tries }
    const times = this.builder.times(spec).end.fine
    return { ref, spec, times, mean: meanOf(times) * fineStep, variance: varianceOf(times) * fineStep ** 2 }
  }

  /** The place's spot next to where it was marked, or all. */
  private spotsOf(goal: string, at: { x?: number; y?: number }): string[] {
    const spots = this.game.goals.find(({ id }) => id === goal)?.spots ?? []
    if (at.x === undefined || at.y === undefined) return spots.map(({ id }) => id)
    const far = ([x, y]: readonly [number, number]) => Math.hypot(x - at.x!, y - at.y!)
    return spots
      .toSorted((a, b) => far(a.at) - far(b.at))
      .slice(0, 1)
      .map(({ id }) => id)
  }
}
