import type { Mechanism } from '../../../../src/model/documents/mechanism.ts'
import { gearingOf, reductionBounds, type Sweep, searchedOf } from '../../../../src/model/timing/index.ts'
import { readNumber } from '../../../shell/fields/parse.ts'
import { current, voltage } from '../../../units/measures.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, typedNumber } from '../../../words/format.ts'

/** As typed, so that nothing typed is lost; limits may be empty. */
export interface SearchTexts {
  low: string
  high: string
  motorCurrent: string
  sourceCurrent: string
  sourceVoltage: string
}

export const mostMotorCounts = 4
/** Points of a sweep, shared among the numbers of motors: as many as a picture can show. */
const points = 200

type Searched = NonNullable<ReturnType<typeof searchedOf>>

const within = (value: number): number =>
  Math.min(reductionBounds.high, Math.max(reductionBounds.low, Number(value.toPrecision(2))))

/** A third of the present reduction to three times it, and the limits that the mechanism itself names. */
export function firstTexts({ input }: Searched): SearchTexts {
  const { reduction } = gearingOf(input)
  const text = (value: number | null) => (value === null ? '' : typedNumber(String(value)))
  return {
    low: text(within(reduction / 3)),
    high: text(within(reduction * 3)),
    motorCurrent: text(input.currentLimit),
    sourceCurrent: '',
    sourceVoltage: text(input.lowestVoltage),
  }
}

/** The present number and its neighbours; a drive has as many motors on either side. */
export function firstMotors({ calculator, input: { motors } }: Searched): number[] {
  const step = calculator === 'drive' && motors % 2 === 0 ? 2 : 1
  return [motors - step, motors, motors + step].filter((count) => count >= 1 && count <= 16)
}

type Errors = { [Name in keyof SearchTexts]?: string }

/** What is asked for, or what can not be read, by field. */
export function readSearch(
  texts: SearchTexts,
): { reductions: { low: number; high: number }; limits: NonNullable<Sweep['limits']> } | { errors: Errors } {
  const errors: Errors = {}
  const read = (name: keyof SearchTexts, rules: Parameters<typeof readNumber>[1]): number => {
    const found = readNumber(texts[name], rules)
    if ('value' in found) return found.value
    errors[name] = found.error
    return Number.NaN
  }
  const bounds = { min: reductionBounds.low, max: reductionBounds.high }
  const [low, high] = [read('low', bounds), read('high', bounds)]
  if (high <= low) errors.high = words().search.highAbove(plain(low), plain(high))
  const limit = (name: keyof SearchTexts, rules: Parameters<typeof readNumber>[1]) =>
    texts[name].trim() === '' ? {} : { [name]: read(name, rules) }
  const limits = {
    ...limit('motorCurrent', { min: 0, max: 10_000, quantity: current }),
    ...limit('sourceCurrent', { min: 0, max: 10_000, quantity: current }),
    ...limit('sourceVoltage', { min: 0, max: 100, quantity: voltage }),
  }
  return Object.keys(errors).length > 0 ? { errors } : { reductions: { low, high }, limits }
}

/** The question for the times. */
export function sweepOf(
  mechanism: Mechanism,
  asked: { reductions: { low: number; high: number }; limits: NonNullable<Sweep['limits']>; motors: readonly number[] },
): Sweep | null {
  const searched = searchedOf(mechanism)
  if (!searched) return null
  const count = Math.floor(points / asked.motors.length)
  return { ...searched, reductions: { ...asked.reductions, count }, motors: asked.motors, limits: asked.limits }
}
