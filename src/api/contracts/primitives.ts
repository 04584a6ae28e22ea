import * as z from 'zod'
import { gotOf } from '../../model/documents/shapes.ts'
import { nameIn, rule } from './sentences.ts'

/** Names that every object of the language already has: as an id they would be found where nothing was entered. */
export const taken = new Set(Object.getOwnPropertyNames(Object.prototype))

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not be in an id
const controls = /[\u0000-\u001f\u007f]/

/** An opaque id, unique in its document. */
export const id = z
  .string()
  .min(1)
  .max(100)
  .refine(
    (text) => !taken.has(text) && !controls.test(text),
    rule(({ input }) => ({
      code: taken.has(String(input)) ? 'takenId' : 'controlInId',
      parts: { got: gotOf(input) },
    })),
  )
  .describe('Opaque id, unique in its document')

export const name = z.string().min(1).max(200).describe('Name shown to people')

/** Free text of at most 5,000 characters. */
export const text = z.string().max(5000)

/** A finite number within bounds; the description names the unit. */
export function measure(low: number, high: number, description: string) {
  return z.number().min(low).max(high).describe(description)
}

/** A finite number above a bound that is itself excluded. */
export function above(low: number, high: number, description: string) {
  return z.number().gt(low).max(high).describe(description)
}

/** A whole number within bounds. */
export function count(low: number, high: number, description: string) {
  return z.int().min(low).max(high).describe(description)
}

export const probability = measure(0, 1, 'Probability, 0 to 1')

/** Longest time that any single thing may take (s): as long as the longest teleop. */
export const longest = 600

/** A time of the match's clock: a multiple of 0.1 s, which is the grid of the plan. */
export function clockTime(low: number, high: number, description: string) {
  return measure(low, high, description)
    .refine(
      (seconds) => Math.abs(seconds * 10 - Math.round(seconds * 10)) < 1e-6,
      rule(({ path, input }) => ({ code: 'notTenths', parts: { name: nameIn(path), got: gotOf(input) } })),
    )
    .meta({ multipleOf: 0.1 })
}

export const points = measure(-10_000, 10_000, 'Points')

/** A coordinate may lie outside the field by mistake; that is answered by the check that knows the field. */
const coordinate = measure(-1000, 1000, 'm')

export const point = z.tuple([coordinate, coordinate]).describe('[x, y] in metres, in the alliance’s own coordinates')

/** An object whose keys are ids. */
export function byId<Value extends z.ZodType>(value: Value, most: number, description: string) {
  return z
    .record(id, value)
    .refine(
      (entries) => Object.keys(entries).length <= most,
      rule(({ path, input }) => ({
        code: 'entries',
        parts: { name: nameIn(path), comparison: 'at most', entries: most, got: Object.keys(input as object).length },
      })),
    )
    .describe(description)
}

/** A list with an upper bound on its length. */
export function list<Item extends z.ZodType>(item: Item, least: number, most: number, description: string) {
  return z.array(item).min(least).max(most).describe(description)
}

/** The version of the document's format; another one is answered, not guessed. */
export const format = z.literal(1).describe('Version of the document’s format')
