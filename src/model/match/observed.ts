import { scaled } from '../compare/inputDuration.ts'
import type { Habit } from '../documents/habit.ts'
import type { Duration, Goal, Load, Option, Spot, Trip } from '../documents/types.ts'
import { keyOf } from '../leg/builder.ts'
import type { PlanNode } from '../plan/types.ts'
import type { Ground } from './ground.ts'
import { type Parameters, parametersOf } from './parameters.ts'
import { finishing, type Kept, type LegToPlay, type PlayedLeg, Player, type Stand, scoring } from './player.ts'
import { Program } from './program.ts'

/**
 * An observed robot: for each trip it draws a goal and a number of pieces by the shares of its habit, and leaves for a finish
 * at its time. Which of its sources it goes to is not observed: each that has what the goal takes is as likely. Where a place
 * has several spots it goes to the nearest; for a whole leg, which takes as long from anywhere, to the first.
 */
export class ObservedPlayer extends Player {
  readonly habit: Habit
  readonly initial: Stand
  readonly mostWords: number
  /** Goals of its habit, in the game's order, and pieces per trip, rising. */
  readonly goals: readonly Goal[]
  readonly counts: readonly number[]
  /** What its numbers may be; one where nothing else is believed. */
  readonly draws: readonly Parameters[]
  /** Those of the match at hand. */
  now: Parameters

  /** @throws ModelError for a route that does not exist, where legs are given in stages */
  constructor(ground: Ground, option: Option, kept: Kept) {
    super(ground, option, kept)
    const { robot, role } = option
    this.habit = robot.habit as Habit
    const { goals, pieces, draws = [] } = this.habit
    const habits = [{ goals, pieces }, ...draws]
    const seen = new Set(habits.flatMap((each) => Object.keys(each.goals ?? {})))
    this.goals = ground.game.goals.filter(
      ({ id }) => seen.has(id) && role.goals.includes(id) && (robot.score[id]?.length ?? 0) > 0,
    )
    const counts = new Set(habits.flatMap((each) => Object.keys(each.pieces ?? {}).map(Number)))
    this.counts = [...counts].sort((a, b) => a - b)
    const order = { goals: this.goals.map(({ id }) => id), pieces: this.counts }
    this.draws = (draws.length > 0 ? draws : [{}]).map((draw) => parametersOf(ground, option, order, draw))
    this.now = this.draws[0] as Parameters
    const routine = robot.autos.find(({ id }) => id === option.auto)
    this.initial = this.standAt(routine ? routine.endsAt : option.start, routine ? routine.holding : robot.preload)
    this.mostWords = this.wordsAtMost()
  }

  /** Sources (one bit each by their place) that have what a goal takes and the robot collects. */
  sourcesFor({ accepts }: Goal): number {
    return this.sources().reduce((bits, { id, piece }) => {
      const place = this.ground.placeOf.get(id) as number
      return accepts.includes(piece) ? bits | (1 << place) : bits
    }, 0)
  }

  override successOf(leg: PlayedLeg): number {
    const own = leg.kind === scoring || leg.kind === finishing ? (this.now.success[leg.place] as number) : -1
    return own < 0 ? leg.success : own
  }

  protected legsFrom(node: PlanNode): LegToPlay[] {
    const { load } = node
    return [...(load ? this.scoringFrom(node, load) : this.collectingFrom(node)), ...this.finishingFrom(node)]
  }

  private sources() {
    const { robot, role } = this.option
    return this.game.sources.filter(
      ({ id, piece }) => robot.collect[id] && role.sources.includes(id) && (robot.carries[piece] ?? 0) >= 1,
    )
  }

  private collectingFrom({ at }: PlanNode): LegToPlay[] {
    const { robot } = this.option
    return this.sources().flatMap(({ id, piece, spots }) => {
      const trip = robot.collect[id]!
      const loads = new Set(this.counts.map((count) => Math.min(count, robot.carries[piece] as number)))
      const spot = this.nearest(trip, at, spots)
      if (spot === null) return []
      const tries = { success: trip.success, retry: trip.retry }
      return [...loads].map((load) => ({
        ...this.leg(trip, { place: id, from: at, spot, load, tries }),
        action: { kind: 'collect' as const, source: id, spot, load },
        success: trip.success,
      }))
    })
  }

  private scoringFrom({ at }: PlanNode, { piece, count }: Load): LegToPlay[] {
    return this.goals.flatMap(({ id, accepts, spots }) => {
      if (!accepts.includes(piece)) return []
      for (const [entry, trip] of (this.option.robot.score[id] ?? []).entries()) {
        const own = trip.spots
        const spot = this.nearest(trip, at, own === 'any' ? spots : spots.filter((each) => own.includes(each.id)))
        if (spot !== null)
          return {
            ...this.leg(trip, { place: id, from: at, spot, load: count }),
            action: { kind: 'score' as const, goal: id, entry, spot },
            success: trip.success,
          }
      }
      return []
    })
  }

  private finishingFrom({ at }: PlanNode): LegToPlay[] {
    const { robot, role, finish } = this.option
    if (finish.mode === 'skip') return []
    return this.game.finishes.flatMap(({ id, spots }) => {
      const trip = robot.finish[id]
      const spot = trip && role.finishes.includes(id) ? this.nearest(trip, at, spots) : null
      if (!trip || spot === null) return []
      return {
        ...this.leg(trip, { place: id, from: at, spot, load: 0 }),
        action: { kind: 'finish' as const, finish: id, spot },
        success: trip.success,
      }
    })
  }

  private nearest(trip: Trip, from: string, spots: readonly Spot[]): string | null {
    if ('whole' in trip) return spots[0]?.id ?? null
    let best: string | null = null
    let least = Number.POSITIVE_INFINITY
    for (const { id } of spots) {
      const seconds = this.travel(from, id)
      if (seconds >= least) continue
      best = id
      least = seconds
    }
    return best
  }

  private leg(
    trip: Trip,
    of: { place: string; from: string; spot: string; load: number; tries?: LegToPlay['spec']['tries'] },
  ): Pick<LegToPlay, 'spec' | 'key' | 'load'> {
    const own = this.unhindered(trip, of.place)
    const drive = 'whole' in own ? null : { seconds: this.travel(of.from, of.spot), pace: this.option.robot.drive.pace }
    return {
      spec: { trip: own, drive, load: Math.max(1, of.load), ...(of.tries ? { tries: of.tries } : {}) },
      key: keyOf(own),
      load: of.load,
    }
  }

  /** The times of a trip without the waiting that was observed with them. */
  private unhindered(trip: Trip, place: string): Trip {
    if (!('whole' in trip)) return { stages: trip.stages }
    const factor = this.habit.unhindered?.[place]
    return { whole: factor === undefined ? trip.whole : (scaled(trip.whole, factor) as Duration) }
  }

  /** No leg of it needs more random words: those for the most pieces that it ever has in hand. */
  private wordsAtMost(): number {
    const { collect, score, finish } = this.option.robot
    const trips: Trip[] = [...Object.values(collect), ...Object.values(score).flat(), ...Object.values(finish)]
    const words = trips.map((trip) => new Program(trip, Math.max(1, this.mostPieces), this.tables).words)
    return Math.max(0, ...words) + Math.max(1, this.mostPieces)
  }
}
