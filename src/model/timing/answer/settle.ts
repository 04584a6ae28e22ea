import type { Spread } from '../types.ts'

/** A number inside an input, by the keys that lead to it. */
export interface Place {
  path: readonly (string | number)[]
  spread: Spread
}

type Node = { [key: string]: unknown }

function isSpread(value: unknown): value is Spread {
  const kind = (value as { kind?: unknown } | null)?.kind
  return kind === 'range' || kind === 'lognormal'
}

/** The likely value of a spread: a range's own, a log-normal's median. */
export const likelyOf = (spread: Spread): number => (spread.kind === 'range' ? spread.likely : spread.median)

/** A copy in which every spread is its likely value, and where the spreads were. */
export function settle<Settled>(input: object): { likely: Settled; places: Place[] } {
  const places: Place[] = []
  const walk = (value: unknown, path: readonly (string | number)[]): unknown => {
    if (isSpread(value)) {
      places.push({ path, spread: value })
      return likelyOf(value)
    }
    if (Array.isArray(value)) return value.map((each, index) => walk(each, [...path, index]))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, walk(each, [...path, key])]))
  }
  return { likely: walk(input, []) as Settled, places }
}

/** Reads a number in a settled input; null where there is none, as for a limit that is not set. */
export function numberAt(input: unknown, path: readonly (string | number)[]): number | null {
  const value = path.reduce<unknown>((part, key) => (part as Node | null | undefined)?.[key], input)
  return typeof value === 'number' ? value : null
}

/** A copy of a settled input with other numbers at some places; what is not on the way to them is shared. */
export function withNumbers<Settled>(input: Settled, changes: readonly (readonly [Place['path'], number])[]): Settled {
  return changes.reduce((copy, [path, value]) => replaced(copy, path, value) as Settled, input)
}

function replaced(value: unknown, path: Place['path'], number: number): unknown {
  const [key, ...rest] = path
  if (key === undefined) return number
  if (Array.isArray(value)) return value.map((each, i) => (i === key ? replaced(each, rest, number) : each))
  return { ...(value as Node), [key]: replaced((value as Node)[key], rest, number) }
}
