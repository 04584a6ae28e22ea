import { plain, typedNumber } from '../words/format.ts'
import { type Measured, type System, unitOf, units } from './quantities.ts'
import { unitsShown } from './system.ts'

/** A kept SI value in the unit shown, with the digits that somebody could measure. */
export const shownValue = (value: number, quantity: Measured, system: System): number =>
  Number(inUnit(value, quantity, system).toFixed(unitOf(quantity, system).digits)) + 0

/** A kept SI value in the unit shown, with no more digits in all than its unit has. */
function inUnit(value: number, quantity: Measured, system: System): number {
  const { factor, offset = 0, significant } = unitOf(quantity, system)
  const shown = (value - offset) / factor
  return significant === undefined ? shown : Number(shown.toPrecision(significant))
}

/** The same as it stands in a field, without the unit. */
export const writeQuantity = (value: number, quantity: Measured, system: System): string =>
  typedNumber(String(shownValue(value, quantity, system)))

/** A kept SI value with its unit, in words: '1.4 m', '55.12 in'. `digits` where fewer decimals say enough. */
export function sayQuantity(value: number, quantity: Measured, system = unitsShown(), digits?: number): string {
  const { symbol, digits: most } = unitOf(quantity, system)
  return `${plain(inUnit(value, quantity, system), Math.min(most, digits ?? most))}\u00a0${symbol}`
}

/** A distance as people say it: '12.3 m', '40 ft 4 in'. */
export function sayDistance(metres: number, system = unitsShown()): string {
  if (system === 'metric') return sayQuantity(metres, 'length', system, 2)
  const inches = Math.round(metres / units.inchPound.length.factor)
  const feet = Math.floor(inches / 12)
  return feet === 0 ? `${inches}\u00a0in` : `${feet}\u00a0ft ${inches - 12 * feet}\u00a0in`
}
