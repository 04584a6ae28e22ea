import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { current, partLength, rotation, torque, voltage, volume } from '../../units/measures.ts'
import { angle, energy, force, turning } from '../../units/mechanics.ts'
import type { Measured } from '../../units/quantities.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { said } from './remarks.ts'

/** How a number to check is written. */
export type Kind = Measured | 'seconds' | 'percent' | 'plain' | 'choked' | 'limit'

const electric: readonly (readonly [string, Kind])[] = [
  ['motorCurrent', current],
  ['sourceCurrent', current],
  ['sourceVoltage', voltage],
]

/** What an engineer checks of each calculator's answer, in this order. The drive's trapezoid is told apart. */
export const quantitiesOf: { readonly [Name in Mechanism['calculator']]: readonly (readonly [string, Kind])[] } = {
  drive: [
    ['topSpeed', 'speed'],
    ['peakSpeed', 'speed'],
    ['acceleration', 'acceleration'],
    ['limitedBy', 'limit'],
    ['kneeSpeed', 'speed'],
    ['deceleration', 'acceleration'],
    ['tractionForce', force],
    ['launchForce', force],
    ['runningSeconds', 'seconds'],
    ['brakingSeconds', 'seconds'],
    ...electric,
  ],
  rollers: [
    ['surfaceSpeed', 'speed'],
    ['ratio', 'plain'],
    ['pieceSpeed', 'speed'],
    ['stallForce', force],
    ['slidingDistance', partLength],
    ...electric,
  ],
  pivot: [
    ['gravityTorque', torque],
    ['startTorque', torque],
    ['peakSpeed', turning],
    ['endSpeed', turning],
    ['endEnergy', energy],
    ['brakingFrom', angle],
    ['holdingCurrent', current],
    ['strokeUsed', partLength],
    ['freeAir', volume],
    ...electric,
  ],
  wheel: [
    ['spinUpSeconds', 'seconds'],
    ['recoverySeconds', 'seconds'],
    ['surfaceSpeed', 'speed'],
    ['energy', energy],
    ['speedAfterShot', rotation],
    ['speedLost', 'percent'],
    ['freeSpeed', rotation],
    ['kneeSpeed', rotation],
    ['timeConstant', 'seconds'],
    ...electric,
  ],
  shot: [
    ['exitSpeed', 'speed'],
    ['vacuumSpeed', 'speed'],
    ['leastSpeed', 'speed'],
    ['leastAngle', angle],
    ['wheelSpeed', rotation],
    ['wheelSurfaceSpeed', 'speed'],
    ['apex', 'length'],
    ['arrivalSpeed', 'speed'],
    ['arrivalAngle', angle],
    ['miss', partLength],
    ['margin', partLength],
  ],
  cylinder: [
    ['force', force],
    ['travel', partLength],
    ['startsAt', 'seconds'],
    ['peakSpeed', 'speed'],
    ['endSpeed', 'speed'],
    ['endEnergy', energy],
    ['flowSpeed', 'speed'],
    ['supplyChoked', 'choked'],
    ['exhaustChoked', 'choked'],
    ['freeAir', volume],
  ],
}

/** How a calculator's number is written; plain where it has none of that name. */
export const kindOfQuantity = (calculator: Mechanism['calculator'], key: string): Kind =>
  quantitiesOf[calculator].find(([name]) => name === key)?.[1] ?? 'plain'

/** A number to check as it is shown. */
export function written(value: unknown, kind: Kind): string {
  const { answers } = words().timings
  if (kind === 'choked') return value ? answers.choked : answers.free
  if (kind === 'limit') return answers[value as 'traction']
  const number = value as number
  if (kind === 'seconds') return `${plain(number, 2)}\u00a0s`
  if (kind === 'percent') return `${plain(100 * number, 1)}\u00a0%`
  return kind === 'plain' ? plain(number, 2) : said(number, kind)
}

/** The quantities that an answer has, in words: what, and how much. Those that do not apply are left out. */
export function quantityWords(
  calculator: Mechanism['calculator'],
  quantities: object,
): { key: string; what: string; much: string }[] {
  const texts = words().timings.quantities
  return quantitiesOf[calculator].flatMap(([key, kind]) => {
    const value = (quantities as { [key: string]: unknown })[key]
    if (value === undefined || value === null) return []
    return [{ key, what: texts[key as keyof typeof texts], much: written(value, kind) }]
  })
}
