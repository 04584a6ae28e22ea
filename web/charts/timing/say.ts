import { current, inertia, partLength, pressure, rotation, torque, voltage } from '../../units/measures.ts'
import { energy } from '../../units/mechanics.ts'
import { type Measured, type System, type Unit, unitOf } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { sayQuantity } from '../../units/write.ts'
import { plain } from '../../words/format.ts'

const space = '\u00a0'

/** Decimals that leave three digits: more than any of these is known to. */
export const threeDigits = (value: number): number =>
  value === 0 || !Number.isFinite(value) ? 0 : Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value)))))

/** A number of a mechanism in the reader's units, with three digits. */
function say(value: number, quantity: Measured): string {
  const system = unitsShown()
  return sayQuantity(value, quantity, system, threeDigits(value / unitOf(quantity, system).factor))
}

/** Below a metre as parts are measured, above it as fields are. */
export const lengthMeasure = (metres: number): Measured => (Math.abs(metres) < 1 ? partLength : 'length')

export const sayLength = (metres: number): string => say(metres, lengthMeasure(metres))
export const saySpeed = (value: number): string => say(value, 'speed')
export const sayAcceleration = (value: number): string => say(value, 'acceleration')
export const sayMass = (value: number): string => say(value, 'mass')
export const sayRotation = (value: number): string => say(value, rotation)
export const sayInertia = (value: number): string => say(value, inertia)
export const sayTorque = (value: number): string => say(value, torque)
export const sayCurrent = (value: number): string => say(value, current)
export const sayVoltage = (value: number): string => say(value, voltage)
export const sayPressure = (value: number): string => say(value, pressure)

/** Radians as everybody says them. */
export const degrees = (radians: number): number => (radians * 180) / Math.PI
export const sayAngle = (radians: number): string => `${plain(degrees(radians), 0)}°`
export const sayTurning = (value: number): string => `${plain(degrees(value), 0)}${space}°/s`

// The pound-force is exact: NIST SP 811, appendix B.8.
const forces: Readonly<Record<System, Unit>> = {
  metric: { symbol: 'N', factor: 1, digits: 2 },
  inchPound: { symbol: 'lbf', factor: 4.4482216152605, digits: 3 },
}
export function sayForce(newtons: number): string {
  const { symbol, factor, digits } = forces[unitsShown()]
  return `${plain(newtons / factor, Math.min(digits, threeDigits(newtons / factor)))}${space}${symbol}`
}

export const sayEnergy = (joules: number): string => say(joules, energy)

/** To a hundredth: a cylinder moves in a tenth. */
export const sayTime = (value: number): string => `${plain(value, value < 0.1 ? 3 : 2)}${space}s`
