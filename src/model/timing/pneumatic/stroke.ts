import type { Pneumatic } from '../inputs.ts'
import { integrate } from '../numerics/integrate.ts'
import { risingRoot } from '../numerics/root.ts'
import type { Trace } from '../numerics/trace.ts'
import { pressureAtRest } from './atRest.ts'
import { flowBetween, flowLaw, reference } from './flow.ts'
import { areasOf } from './gas.ts'

/** What a load is like at one coordinate. */
export interface Place {
  /** Travel of the piston since the start (m), and its slope over the coordinate. */
  travel: number
  slope: number
  /** Force or torque against the coordinate, the cylinders' own friction not counted. */
  resistance: number
}

/**
 * What cylinders move, told by one coordinate that grows from 0 to `end` (m of a straight load, rad of an arm).
 */
export interface Load {
  direction: 'extend' | 'retract'
  end: number
  /** kg or kg·m². */
  inertia: number
  /** The same object each time, valid until the next call: it is asked for thousands of times. */
  at(coordinate: number): Readonly<Place>
  /** Travel of the piston before the start (m), from the end that it leaves. */
  before: number
}

/** Of the state: coordinate, its rate, pressure that pushes, pressure that resists. */
export const coordinate = 0
export const rate = 1
export const push = 2
export const back = 3

export interface Stroke {
  seconds: number
  startsAt: number
  state: Float64Array
  /** In order; those at rest among them. Empty where they are not kept. */
  traces: { from: number; trace: Pick<Trace, 'at'> }[]
  /** Highest rate; 0 where traces are not kept. */
  peak: number
}

const longest = 600
const mostPauses = 40

/**
 * Follows a stroke: the chambers by isothermal mass balances with ISO 6358 flows, the load by Newton's law with dry friction.
 * Where the forces do not suffice the piston stands until they do; that a load pushes it back for a moment is left out.
 * Null where it never arrives.
 */
export function stroke(input: Pneumatic<number>, load: Load, tolerance: number, keep = false): Stroke | null {
  const air = chambers(input, load)
  const traces: Stroke['traces'] = []
  let state: Float64Array = Float64Array.from([
    0,
    0,
    input.ambient,
    input.farSide === 'charged' ? input.pressure : input.ambient,
  ])
  let time = 0
  let startsAt: number | null = null
  let peak = 0
  const scale = [load.end * 1e-3, load.end * 1e-1, 1000, 1000]
  for (let turn = 0; turn < mostPauses; turn++) {
    if (air.net(state) <= 0) {
      const rest = resting(air, state, { input, longest: longest - time, tolerance, scale, keep })
      if (rest === null) return null
      traces.push({ from: time, trace: rest.trace })
      time += rest.seconds
      state = rest.state
    }
    startsAt ??= time
    let highest = 0
    const moving = integrate({
      rates: keep
        ? (at, rates) => {
            air.rates(at, rates, true)
            if (at[coordinate]! <= load.end && at[rate]! > highest) highest = at[rate]!
          }
        : air.movingRates,
      from: state,
      until: [(at) => at[coordinate]! - load.end, (at) => -at[rate]!],
      longest: longest - time,
      tolerance,
      scale,
      keep,
    })
    traces.push({ from: time, trace: moving.trace })
    time += moving.seconds
    state = moving.state
    peak = Math.max(peak, highest)
    if (moving.event === 0) return { seconds: time, startsAt, state, traces, peak }
    if (moving.event === null) return null
    state[rate] = 0
  }
  return null
}

interface Rest {
  input: Pneumatic<number>
  longest: number
  tolerance: number
  scale: readonly number[]
  keep: boolean
}

/**
 * The time for which a piston stands, until the forces suffice; null where they never do. Where one chamber fills and the other
 * empties, both in closed form, the net force only rises. Elsewhere (a load has pressed a chamber above its supply) they are
 * followed in time.
 */
function resting(
  air: Chambers,
  state: Float64Array,
  rest: Rest,
): { seconds: number; state: Float64Array; trace: Pick<Trace, 'at'> } | null {
  const { input, longest, tolerance, scale, keep } = rest
  const { pressure, ambient } = input
  if (state[push]! > pressure || state[back]! < ambient) {
    const rates = (at: Float64Array, into: Float64Array) => air.rates(at, into, false)
    const done = integrate({ rates, from: state, until: [air.net], longest, tolerance, scale, keep })
    return done.event === null ? null : done
  }
  const standing = state.slice()
  standing[push] = pressure
  standing[back] = ambient
  if (air.net(standing) <= 0) return null
  const [filled, emptied] = air.atRest(state)
  const after = (seconds: number) => {
    standing[push] = filled(seconds)
    standing[back] = emptied(seconds)
    return standing
  }
  const net = (seconds: number) => air.net(after(seconds))
  let high = 1e-3
  while (net(high) < 0) {
    high *= 2
    if (high > longest) return null
  }
  const seconds = risingRoot(net, 0, high)
  const trace = { at: (time: number) => after(time).slice() }
  return { seconds, state: after(seconds).slice(), trace }
}

type Chambers = ReturnType<typeof chambers>

/** The two chambers of one cylinder and the forces of all. */
export function chambers(input: Pneumatic<number>, load: Load) {
  const { supply, exhaust, pressure, ambient, temperature, cylinderFriction, deadVolume, cylinders, cylinder } = input
  const { full, ring } = areasOf(cylinder)
  const [pushed, resisting] = load.direction === 'extend' ? [full, ring] : [ring, full]
  const supplied = flowLaw(supply, temperature)
  const exhausted = flowLaw(exhaust, temperature)
  const warmth = (reference.pressure * temperature) / reference.temperature
  const outside = ambient * (pushed - resisting) + cylinderFriction
  const { inertia, before } = load
  const { stroke: whole } = cylinder
  const force = (at: Float64Array) => cylinders * (at[push]! * pushed - at[back]! * resisting - outside)
  const net = (at: Float64Array) => {
    const { slope, resistance } = load.at(at[coordinate]!)
    return force(at) * slope - resistance
  }
  const volumes = (at: Float64Array) => {
    const travel = before + load.at(at[coordinate]!).travel
    return [deadVolume + pushed * travel, deadVolume + resisting * (whole - travel)] as const
  }
  const rates = (at: Float64Array, into: Float64Array, moving: boolean): void => {
    const place = load.at(at[coordinate]!)
    const { slope } = place
    const travel = before + place.travel
    const speed = moving ? at[rate]! * slope : 0
    const inflow = flowBetween(supplied, pressure, at[push]!)
    const outflow = flowBetween(exhausted, at[back]!, ambient)
    into[coordinate] = moving ? at[rate]! : 0
    into[rate] = moving ? (force(at) * slope - place.resistance) / inertia : 0
    into[push] = (warmth * inflow - at[push]! * pushed * speed) / (deadVolume + pushed * travel)
    into[back] = (at[back]! * resisting * speed - warmth * outflow) / (deadVolume + resisting * (whole - travel))
  }
  return {
    net,
    volumes,
    rates,
    movingRates: (at: Float64Array, into: Float64Array) => rates(at, into, true),
    /** Both pressures over the time from a state, while the piston stands. */
    atRest: (at: Float64Array) => {
      const [filled, emptied] = volumes(at)
      const filling = { from: at[push]!, towards: pressure, pace: (warmth * supplied.perPascal) / filled, path: supply }
      const emptying = {
        from: at[back]!,
        towards: ambient,
        pace: (warmth * exhausted.perPascal) / emptied,
        path: exhaust,
      }
      return [pressureAtRest(filling), pressureAtRest(emptying)] as const
    },
    pushed,
    resisting,
  }
}

/** Forces at the end of the pressures: full against the room's. Of all cylinders (N), friction taken off. */
export function fullForce(input: Pneumatic<number>, direction: Load['direction']): number {
  const { full, ring } = areasOf(input.cylinder)
  const area = direction === 'extend' ? full : ring
  return input.cylinders * ((input.pressure - input.ambient) * area - input.cylinderFriction)
}

/** Points of a stroke for a drawing, evenly over its time. */
export function drawn({ seconds, traces }: Stroke, points: number) {
  const times = Array.from({ length: points }, (_, i) => (seconds * i) / (points - 1))
  const states = times.map((time) => {
    const { from, trace } = traces.findLast((each) => each.from <= time) ?? traces[0]!
    return trace.at(time - from)
  })
  const row = (index: number) => states.map((state) => state[index]!)
  return { time: times, coordinate: row(coordinate), rate: row(rate), push: row(push), back: row(back) }
}
