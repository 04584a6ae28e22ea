import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { likelyOf } from '../../../src/model/timing/answer/settle.ts'
import { gravity } from '../../../src/model/timing/gravity.ts'
import type { Uncertain } from '../../../src/model/timing/index.ts'
import { valueAt } from '../../data/place.ts'
import { inertia, pressure, rotation, voltage } from '../../units/measures.ts'
import { energy } from '../../units/mechanics.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { fieldWords } from './MechanismForm.tsx'
import { type Kind, kindOfQuantity, written } from './quantities.ts'

/** A part of a sum or product, taken with what stands before it, from the first one on. */
export interface Term {
  by: '+' | '−' | '×' | '÷'
  what: string
  amount: number
  shown: string
}

/** The parts that make a number, and what they make. */
export interface Sum {
  terms: Term[]
  total: { what: string; amount: number; shown: string }
}

/** What the terms make, one after the other. */
export const combined = (terms: readonly Term[]): number =>
  terms.reduce((sum, { by, amount }) => {
    if (by === '×') return sum * amount
    if (by === '÷') return sum / amount
    return by === '+' ? sum + amount : sum - amount
  }, 0)

type Found = { terms: Term[]; total?: Sum['total'] } | null

/**
 * The parts of one of the numbers to check, at the likely numbers, where it is a sum or product of numbers that are told; null
 * where it is read off a course that is followed step by step, and where the parts do not make it (a cap holds it, say).
 */
export function quantitySum(
  mechanism: Mechanism,
  quantities: object,
  of: { key: string; seconds: number | null },
): Sum | null {
  const { key, seconds } = of
  const all = quantities as { [key: string]: number }
  const value = all[key]
  if (typeof value !== 'number') return null
  const { how, quantities: names } = words().timings
  const name = (each: string) => names[each as keyof typeof names]
  const number = (field: string): number => {
    const found = valueAt(mechanism.input, field.split('.')) as Uncertain | null | undefined
    return found === null || found === undefined ? Number.NaN : typeof found === 'number' ? found : likelyOf(found)
  }
  const term = (by: Term['by'], what: string, amount: number, kind: Kind = 'plain'): Term => ({
    by,
    what,
    amount,
    shown: kind === 'plain' ? plain(amount, 3) : written(amount, kind),
  })
  /** A number of the form, and one that is told beside it. */
  const input = (by: Term['by'], field: string, kind: Kind = 'plain') =>
    term(by, fieldWords(mechanism.calculator, field).label, number(field), kind)
  const told = (by: Term['by'], other: string) =>
    term(by, name(other), all[other] ?? Number.NaN, kindOfQuantity(mechanism.calculator, other))
  const falls = term('×', how.gravity, gravity, 'acceleration')
  const half = term('÷', how.half, 2)
  const time = () => term('+', words().timings.explain.total, seconds ?? Number.NaN, 'seconds')
  const energyOf = (mass: Term): Found => ({ terms: [mass, told('×', 'endSpeed'), told('×', 'endSpeed'), half] })

  const sums: { readonly [key: string]: () => Found } = {
    'drive.tractionForce': () => ({
      terms: [input('+', 'mass', 'mass'), falls, input('×', 'drivenShare'), input('×', 'friction')],
    }),
    'drive.deceleration': () => ({ terms: [told('+', 'tractionForce'), input('÷', 'mass', 'mass')] }),
    'drive.runningSeconds': () => ({ terms: [time(), told('−', 'brakingSeconds')] }),
    'drive.brakingSeconds': () => ({ terms: [time(), told('−', 'runningSeconds')] }),
    'rollers.ratio': () => ({ terms: [told('+', 'surfaceSpeed'), input('÷', 'driveSpeed', 'speed')] }),
    'pivot.gravityTorque': () => {
      const [from, to] = [number('from'), number('to')]
      // At as many angles of the way as the model looks at.
      const cosines = Array.from({ length: 101 }, (_, step) => Math.abs(Math.cos(from + ((to - from) * step) / 100)))
      return {
        terms: [
          input('+', 'mass', 'mass'),
          falls,
          input('×', 'centre', 'length'),
          term('×', how.steepest, Math.max(...cosines)),
        ],
      }
    },
    'pivot.endEnergy': () => energyOf(input('+', 'inertia', inertia)),
    'wheel.surfaceSpeed': () => ({
      terms: [input('+', 'target', rotation), input('×', 'wheelDiameter', 'length'), half],
    }),
    'wheel.speedAfterShot': () => {
      const shot = (number('shot.pieceMass') * number('shot.exitSpeed') ** 2) / 2 / number('shot.transfer')
      const left = all['energy']! * (value / number('target')) ** 2
      return {
        terms: [told('+', 'energy'), term('−', how.shotEnergy, shot, energy)],
        total: { what: how.energyLeft, amount: left, shown: written(left, energy) },
      }
    },
    'wheel.speedLost': () => ({
      terms: [input('+', 'target', rotation), told('−', 'speedAfterShot'), input('÷', 'target', rotation)],
    }),
    'shot.wheelSurfaceSpeed': () => ({ terms: [told('+', 'exitSpeed'), input('÷', 'transfer')] }),
    'shot.wheelSpeed': () => ({
      terms: [told('+', 'wheelSurfaceSpeed'), input('÷', 'wheelDiameter', 'length'), term('×', how.diameter, 2)],
    }),
    'shot.apex': () => ({
      terms: [input('+', 'releaseHeight', 'length'), term('+', how.rise, value - number('releaseHeight'), 'length')],
    }),
    'cylinder.force': () => {
      const over = number('pressure') - number('ambient')
      const [bore, rod] = [number('cylinder.bore'), number('cylinder.rod')]
      const retracts = 'direction' in mechanism.input && mechanism.input.direction === 'retract'
      const area = (Math.PI / 4) * (bore ** 2 - (retracts ? rod ** 2 : 0))
      return {
        terms: [
          term('+', how.overPressure, over, pressure),
          { by: '×', what: how.area, amount: area, shown: `${plain(area * 1e4, 2)}\u00a0cm²` },
          input('×', 'cylinders'),
        ],
      }
    },
    'cylinder.endEnergy': () => energyOf(input('+', 'mass', 'mass')),
    sourceVoltage: () => ({
      terms: [
        input('+', 'voltage', voltage),
        term('−', how.sourceDrop, number('sourceResistance') * (all['sourceCurrent'] ?? Number.NaN), voltage),
      ],
    }),
  }
  const found = (sums[`${mechanism.calculator}.${key}`] ?? sums[key])?.()
  if (!found) return null
  const kind = kindOfQuantity(mechanism.calculator, key)
  const total = found.total ?? { what: name(key), amount: value, shown: written(value, kind) }
  const off = Math.abs(combined(found.terms) - total.amount)
  return off <= 1e-6 * Math.max(Math.abs(total.amount), 1e-9) ? { terms: found.terms, total } : null
}
