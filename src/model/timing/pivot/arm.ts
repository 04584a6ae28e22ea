import { remark } from '../answer/remark.ts'
import { gravity } from '../gravity.ts'
import type { PivotInput } from '../inputs.ts'
import { evenly } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'

/** An arm's way from angle to angle, told by how far it has turned (rad, rising from 0). */
export interface Arm {
  /** How far it turns. */
  end: number
  /** 1 upwards in angle, −1 downwards. */
  sign: 1 | -1
  angleAt(turned: number): number
  /** Torque of gravity against the turn; below 0 it helps. */
  gravityAt(turned: number): number
  /** Gravity's work against the turn between two places (J). */
  liftBetween(from: number, to: number): number
  /** Greatest torque that gravity can have at any angle (N·m). */
  weight: number
  /** Greatest torque of gravity on the way, whichever way it acts. */
  greatest(): number
}

export function armOf({ mass, centre, from, to }: PivotInput<number>): Arm {
  const sign = to < from ? -1 : 1
  const weight = mass * gravity * centre
  const angleAt = (turned: number) => from + sign * turned
  const gravityAt = (turned: number) => sign * weight * Math.cos(angleAt(turned))
  const end = Math.abs(to - from)
  return {
    end,
    sign,
    angleAt,
    gravityAt,
    liftBetween: (a, b) => weight * (Math.sin(angleAt(b)) - Math.sin(angleAt(a))),
    weight,
    greatest: () => Math.max(...evenly(0, end, 101).map((turned) => Math.abs(gravityAt(turned)))),
  }
}

/** What forbids a way whatever turns the arm; null: nothing. */
export function wayForbidden({ from, to, stops }: PivotInput<number>): Remark | null {
  if (Math.abs(to - from) < 1e-9) return remark('noTurn', 'Start and end are the same angle of {from} rad', { from })
  if (!stops) return null
  const { low, high } = stops
  if (from < low || from > high) {
    const text = 'It would start at {from} rad, outside of the stops at {low} and {high} rad'
    return remark('startsBeyondStop', text, { from, low, high })
  }
  if (to >= low && to <= high) return null
  const text = 'A stop stands in the way: {to} rad lies outside of {low} to {high} rad'
  return remark('stopInTheWay', text, { to, low, high })
}

/** A hard stop right at the end takes up what speed is left; anything else has to be pointed out. */
export function arrivalWarning({ to, stops }: PivotInput<number>, endEnergy: number): Remark[] {
  if (endEnergy <= 0) return []
  const stands = stops !== null && Math.min(Math.abs(to - stops.low), Math.abs(to - stops.high)) < 1e-6
  const values = { energy: endEnergy }
  return [
    stands
      ? remark('hitsStop', 'It runs against the stop with {energy} J', values)
      : remark('runsPast', 'It arrives with {energy} J and needs a stop there', values),
  ]
}
