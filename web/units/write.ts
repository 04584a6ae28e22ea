import { type Quantity, type System, units } from './quantities.ts'

/** A number with at most so many decimals, and none that say nothing. */
const trimmed = (value: number, digits: number): string => String(Number(value.toFixed(digits)) + 0)

/** A kept SI value in the unit shown, without the unit: what stands in a field. */
export function writeQuantity(value: number, quantity: Quantity, system: System): string {
  const { factor, digits } = units[system][quantity]
  return trimmed(value / factor, digits)
}

/** A kept SI value with its unit, in words: '1.4 m', '55.12 in'. `digits` where fewer decimals say enough. */
export function sayQuantity(value: number, quantity: Quantity, system: System, digits?: number): string {
  const { symbol, factor, digits: most } = units[system][quantity]
  return `${trimmed(value / factor, Math.min(most, digits ?? most)).replace('-', '\u2212')}\u00a0${symbol}`
}

/** A distance as people say it: '12.3 m', '40 ft 4 in'. */
export function sayDistance(metres: number, system: System): string {
  if (system === 'metric') return sayQuantity(metres, 'length', system, 2)
  const inches = Math.round(metres / units.inchPound.length.factor)
  const feet = Math.floor(inches / 12)
  return feet === 0 ? `${inches}\u00a0in` : `${feet}\u00a0ft ${inches - 12 * feet}\u00a0in`
}
