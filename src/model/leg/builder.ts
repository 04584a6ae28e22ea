import type { Trip } from '../documents/types.ts'
import { denseOnGrid, massOnGrid, scaledAtomsOnGrid } from '../duration/grid.ts'
import { type AnyDuration, distributionOf } from '../duration/index.ts'
import { GenerationCache } from './cache.ts'
import { type Parts, sumOnce } from './evaluate.ts'
import { LazySum, type LegTime } from './lazySum.ts'
import { type Makespan, makespanOf } from './makespan.ts'
import { MovedTime } from './movedTime.ts'
import { inSeries, type Network, networkOf } from './network.ts'
import { capped, convolve, type Pmf, point, regrid, shift, thinned } from './pmf.ts'
import { retriesOf } from './retries.ts'

/** The drive of one leg: its time from rest to rest (s) and the factor that varies from leg to leg. */
export interface LegDrive {
  readonly seconds: number
  readonly pace: AnyDuration
}

/** Stands for the one time of a trip that is given whole, where stages are named. */
export const wholeTrip = 'whole'

/** Every draw of one stage moved by some seconds, not below 0: what a stage's worth is asked with. */
export interface StageShift {
  readonly stage: string
  readonly seconds: number
}

export interface LegSpec {
  readonly trip: Trip
  /** Null for a trip given whole. */
  readonly drive: LegDrive | null
  readonly load: number
  /** A collect leg's tries; a score or finish leg has none. */
  readonly tries?: { readonly success: number; readonly retry: AnyDuration | null }
  readonly shift?: StageShift | undefined
}

/** A leg's times. */
export interface LegTimes {
  readonly end: LegTime
  /** When piece 1, 2, … of the load counts, where pieces count one by one; null where all count at the end. */
  readonly pieces: readonly LegTime[] | null
  /** Between a piece and the 1st, 2nd, … after it, where pieces count one by one: independent of when the earlier one counts. */
  readonly between: readonly LegTime[] | null
}

interface Shape {
  readonly network: Network
  readonly makespan: Makespan
  /** The repeated stage after which nothing comes, if the pieces count one by one. */
  readonly lastEach: number | null
  /** Start of that stage: the latest finish of all before it. */
  readonly start: Makespan | null
}

/** A caller-made cache key for a trip: equal documents give equal keys, so that an edit rebuilds only what it changed. */
export const keyOf = (value: unknown): string => JSON.stringify(value)

/**
 * Builds the time distributions of legs on a fine grid and keeps them between plans.
 * One builder serves one grid.
 */
export class LegBuilder {
  /** Seconds between the points of the fine grid. */
  readonly step: number
  /** Of these points to one step of the plan. */
  readonly perStep: number
  private readonly shapes = new GenerationCache<Shape>()
  private readonly stages = new GenerationCache<Pmf>()
  private readonly legs = new GenerationCache<LegTimes>()
  private readonly starts = new GenerationCache<Parts>()
  private readonly pieces = new GenerationCache<LazySum>()

  /** Legs moved as a whole, by the leg as it is: two stages moved by as much give the same one. */
  private readonly moved = new WeakMap<LegTimes, Map<string, LegTimes>>()

  /** Keys of the documents of this round: the legs of a trip ask for the same ones again and again. */
  private keys = new WeakMap<object, string>()

  /** Grid points beyond which times are gathered on the last: no plan tells them apart. */
  private readonly limit: number

  /** @param longest times longer than this are of no interest (s) */
  constructor(step: number, perStep = 1, longest = Number.POSITIVE_INFINITY) {
    this.step = step
    this.perStep = perStep
    this.limit = longest / step
  }

  /** Forget what neither this nor the last round of questions used. */
  turn(): void {
    this.keys = new WeakMap()
    this.shapes.turn(50)
    this.stages.turn(200)
    this.starts.turn(200)
    this.pieces.turn(200)
    this.legs.turn(400)
  }

  /** `key` names the trip (see keyOf); everything else in the spec is added to it here. */
  times(spec: LegSpec, key = keyOf(spec.trip)): LegTimes {
    const whole = spec.shift && this.movedWhole(spec, spec.shift, key)
    if (whole) return whole
    const moved = spec.shift ? `|${spec.shift.stage}${spec.shift.seconds}` : ''
    const base = `${key}|${spec.drive ? `${spec.drive.seconds}|${this.key(spec.drive.pace)}` : ''}${moved}`
    const tries = spec.tries ? `|${spec.tries.success}|${this.key(spec.tries.retry)}` : ''
    return this.legs.get(`${base}|${spec.load}${tries}`, () => this.build(spec, key, base))
  }

  /** Each stage's own distribution, the drive first, repetitions of the load included. */
  stageTimes(spec: LegSpec): Pmf[] {
    if ('whole' in spec.trip) return []
    return [
      this.drive(spec.drive as LegDrive),
      ...spec.trip.stages.map((stage) => this.stage(stage.duration, stage.each ? spec.load : 1)),
    ]
  }

  private key(value: object | null): string {
    if (value === null) return ''
    let key = this.keys.get(value)
    if (key === undefined) {
      key = keyOf(value)
      this.keys.set(value, key)
    }
    return key
  }

  /** The times of a leg that moves as a whole when its stage does, or null: a stage beside others, or a draw that meets 0. */
  private movedWhole(spec: LegSpec, { stage: id, seconds }: StageShift, key: string): LegTimes | null {
    const { trip, load } = spec
    const stage = 'whole' in trip ? { duration: trip.whole, each: false } : trip.stages.find((other) => other.id === id)
    const by = seconds / this.step
    if (!stage || this.stage(stage.duration).first + Math.floor(by + 1e-9) < 0) return null
    const shape = this.shapes.get(key, () => shapeOf(trip))
    const i = shape.network.ids.indexOf(id)
    if ('stages' in trip && !inSeries(shape.network, i)) return null
    const times = this.times({ ...spec, shift: undefined }, key)
    const byPiece = times.pieces !== null && i === shape.lastEach && load > 1
    return this.later(times, byPiece ? { first: by, each: by } : { first: stage.each ? load * by : by, each: 0 })
  }

  private later(times: LegTimes, { first, each }: { first: number; each: number }): LegTimes {
    const known = this.moved.get(times) ?? new Map<string, LegTimes>()
    this.moved.set(times, known)
    const key = `${first}|${each}`
    let made = known.get(key)
    if (!made) {
      const pieces = times.pieces?.map((piece, n) => new MovedTime(piece, first + n * each)) ?? null
      const between = times.between?.map((time, n) => (each === 0 ? time : new MovedTime(time, (n + 1) * each))) ?? null
      made = { end: pieces?.at(-1) ?? new MovedTime(times.end, first), pieces, between }
      known.set(key, made)
    }
    return made
  }

  private build(spec: LegSpec, key: string, base: string): LegTimes {
    const retries =
      spec.tries && spec.tries.success < 1 ? this.retries(spec.tries.success, spec.tries.retry) : undefined
    if ('stages' in spec.trip) return this.network(spec, key, base, retries)
    const whole = this.stage(spec.trip.whole, 1, spec.shift?.stage === wholeTrip ? spec.shift.seconds : 0)
    return { end: new LazySum(whole, retries ?? null), pieces: null, between: null }
  }

  /** Times of a network and of what comes `after` it; pieces count one by one only where nothing does. */
  private network(spec: LegSpec, key: string, base: string, after?: Pmf): LegTimes {
    const stages = 'stages' in spec.trip ? spec.trip.stages : []
    const shape = this.shapes.get(key, () => shapeOf(spec.trip))
    const time = (i: number, repeats: number): Pmf => {
      if (i === 0) return this.drive(spec.drive as LegDrive)
      const stage = stages[i - 1] as (typeof stages)[number]
      return this.stage(stage.duration, repeats, spec.shift?.stage === stage.id ? spec.shift.seconds : 0)
    }
    const repeats = (i: number) => (i > 0 && stages[i - 1]?.each ? spec.load : 1)
    if (shape.lastEach !== null && shape.start && !after) {
      const last = shape.lastEach
      const startOf = shape.start
      const inLoad = stages.some((stage, i) => stage.each && i + 1 !== last) ? `|${spec.load}` : ''
      const start = this.starts.get(base + inLoad, () => startOf(shape.network.ids.map((_, i) => time(i, repeats(i)))))
      const piece = (n: number) => {
        const each = time(last, n)
        const rest = start.rest ? capped(sumOnce(start.rest, each), this.limit) : each
        return new LazySum(start.driven, rest, this.limit)
      }
      const pieces = Array.from({ length: spec.load }, (_, n) =>
        this.pieces.get(`${base}${inLoad}#${n + 1}`, () => piece(n + 1)),
      )
      const between = Array.from({ length: spec.load - 1 }, (_, n) => new LazySum(time(last, n + 1), null))
      return { end: pieces[spec.load - 1] as LazySum, pieces, between }
    }
    const times = shape.network.ids.map((_, i) => time(i, repeats(i)))
    const { driven, rest } = shape.makespan(times, after)
    return { end: new LazySum(driven, rest), pieces: null, between: null }
  }

  /** A drive: its time multiplied by the pace, which is put once on a grid fine enough for all drives of its length. */
  private drive({ seconds, pace }: LegDrive): Pmf {
    const key = this.key(pace)
    return this.stages.get(`drive|${seconds}|${key}`, () => {
      const factor = distributionOf(pace)
      if (seconds === 0) return point(0)
      if (factor.atoms) return scaledAtomsOnGrid(factor.atoms, this.step, seconds)
      const step = this.step / 2 ** Math.ceil(Math.log2(seconds))
      const paces = this.stages.get(`pace|${step}|${key}`, () => denseOnGrid(factor, step))
      return thinned(regrid(paces, this.step / step, seconds))
    })
  }

  private sum(a: Pmf, b: Pmf): Pmf {
    return capped(convolve(a, b), this.limit)
  }

  /** The sum of `repeats` draws of a duration, each moved by `moved` seconds. */
  private stage(duration: AnyDuration, repeats = 1, moved = 0): Pmf {
    const key = this.key(duration)
    return this.stages.get(`${key}|${moved}|${repeats}`, () => {
      if (repeats > 1) return this.sum(this.stage(duration, repeats - 1, moved), this.stage(duration, 1, moved))
      const own = massOnGrid(distributionOf(duration), this.step)
      return moved === 0 ? own : shift(own, moved / this.step)
    })
  }

  /** The time of min(K, 20) retries, K geometric. */
  private retries(success: number, retry: AnyDuration | null): Pmf | undefined {
    if (!retry) return undefined
    return this.stages.get(`retries|${success}|${this.key(retry)}`, () => retriesOf(success, this.stage(retry)))
  }
}

function shapeOf(trip: Trip): Shape {
  const stages = 'stages' in trip ? trip.stages : []
  const network = networkOf(stages)
  const all = network.ids.map((_, i) => i)
  const sink = network.sinks.length === 1 ? (network.sinks[0] as number) : 0
  const lastEach = sink > 0 && stages[sink - 1]?.each ? sink : null
  return {
    network,
    makespan: makespanOf(network, all),
    lastEach,
    start:
      lastEach === null
        ? null
        : makespanOf(
            network,
            all.filter((i) => i !== lastEach),
          ),
  }
}
