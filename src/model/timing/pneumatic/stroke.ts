import type { Pneumatic } from '../inputs.ts'
import { integrate } from '../numerics/integrate.ts'
import type { Trace } from '../numerics/trace.ts'
import { chamberFlow, reference } from './flow.ts'
import { areasOf } from './gas.ts'

/**
 * What cylinders move, told by one coordinate that grows from 0 to `end` (m of a straight load, rad of an arm).
 */
export interface Load {
  direction: 'extend' | 'retract'
  end: number
  /** kg or kg·m². */
  inertia: number
  /** Travel of the piston since the start at a coordinate (m), and its slope. */
  travelAt(coordinate: number): number
  slopeAt(coordinate: number): number
  /** Force or torque against the coordinate, the cylinders' own friction not counted. */
  resistanceAt(coordinate: number): number
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
  /** In order; those at rest among them. */
  traces: { from: number; trace: Trace }[]
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
      const rest = integrate({
        rates: (at, rates) => air.rates(at, rates, false),
        from: state,
        until: [(at) => air.net(at)],
        longest: longest - time,
        tolerance,
        scale,
        keep,
      })
      traces.push({ from: time, trace: rest.trace })
      time += rest.seconds
      state = rest.state
      if (rest.event === null) return null
    }
    startsAt ??= time
    let highest = 0
    const moving = integrate({
      rates: (at, rates) => {
        air.rates(at, rates, true)
        if (at[coordinate]! <= load.end && at[rate]! > highest) highest = at[rate]!
      },
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

/** The two chambers of one cylinder and the forces of all. */
export function chambers(input: Pneumatic<number>, load: Load) {
  const { supply, exhaust, pressure, ambient, temperature, cylinderFriction, deadVolume, cylinders, cylinder } = input
  const { full, ring } = areasOf(cylinder)
  const [pushed, resisting] = load.direction === 'extend' ? [full, ring] : [ring, full]
  const [flowIn, flowOut] = [chamberFlow(supply, temperature), chamberFlow(exhaust, temperature)]
  const warmth = (reference.pressure * temperature) / reference.temperature
  const outside = ambient * (pushed - resisting) + cylinderFriction
  const force = (at: Float64Array) => cylinders * (at[push]! * pushed - at[back]! * resisting - outside)
  const net = (at: Float64Array) => force(at) * load.slopeAt(at[coordinate]!) - load.resistanceAt(at[coordinate]!)
  return {
    net,
    volumes: (at: Float64Array) => {
      const travel = load.before + load.travelAt(at[coordinate]!)
      return [deadVolume + pushed * travel, deadVolume + resisting * (cylinder.stroke - travel)] as const
    },
    rates(at: Float64Array, rates: Float64Array, moving: boolean): void {
      const turned = at[coordinate]!
      const travel = load.before + load.travelAt(turned)
      const slope = load.slopeAt(turned)
      const speed = moving ? at[rate]! * slope : 0
      const inflow = flowIn(pressure, at[push]!)
      const outflow = flowOut(at[back]!, ambient)
      rates[coordinate] = moving ? at[rate]! : 0
      rates[rate] = moving ? (force(at) * slope - load.resistanceAt(turned)) / load.inertia : 0
      rates[push] = (warmth * inflow - at[push]! * pushed * speed) / (deadVolume + pushed * travel)
      rates[back] =
        (at[back]! * resisting * speed - warmth * outflow) / (deadVolume + resisting * (cylinder.stroke - travel))
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
