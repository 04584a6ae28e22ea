import { inner } from '../documents/sentences.ts'
import type { Inner } from '../said.ts'
import type { Allowed } from './sentences.ts'

type Bound = { low: number; high: number; whole?: true; above?: true; tenth?: true; words: Allowed }

const probability: Bound = { low: 0, high: 1, words: 'between 0 and 1' }
const notNegative: Bound = { low: 0, high: Infinity, words: 'at least 0' }
const positive: Bound = { low: 0, high: Infinity, above: true, words: 'above 0' }
const atLeastOne: Bound = { low: 1, high: Infinity, words: 'at least 1' }
const count: Bound = { low: 0, high: Infinity, whole: true, words: 'a whole number, at least 0' }
const countFromOne: Bound = { low: 1, high: Infinity, whole: true, words: 'a whole number, at least 1' }
const tenths: Bound = { low: 0, high: Infinity, tenth: true, words: 'a multiple of 0.1 s, at least 0' }
const anyNumber: Bound = { low: -Infinity, high: Infinity, words: 'a finite number' }

/** The first pattern that the pointer matches decides. A Duration is checked as a whole, elsewhere. */
const fields: readonly [RegExp, Bound][] = [
  [/\/(success|leaves|absent|stops)$/, probability],
  [/\/habit\/(goals|pieces)\/[^/]+$/, probability],
  [/\/drive\/(topSpeed|acceleration|deceleration)$/, positive],
  [/\/(footprint|field)\/(length|width)$/, positive],
  [/\/form\/spread$/, atLeastOne],
  [/\/(preload|holding|takes\/\d+|steps\/\d+)\/count$/, countFromOne],
  [/\/carries\/[^/]+$/, countFromOne],
  [/\/(slots|capacity|size)$/, countFromOne],
  [/\/stock$/, count],
  [/\/needs\/[^/]+$/, countFromOne],
  [/\/restock\/every$/, positive],
  [/\/clock\/(auto|pause|teleop|endgame)$/, tenths],
  [/\/(clearance|slowdown|at|from|until|departs)$/, notNegative],
  [/\/holdSeconds\/[^/]+$/, notNegative],
  [/\/(minor|major)(PerMatch|PerMinute)?$/, notNegative],
  [/\/(limits|budget)\/(mass|cost|hours)$/, notNegative],
]

/** Numbers that say what a document is rather than how large something is. */
const fixed = /\/(format|mark)$/

/** Bounds by pointer: a belief asks about the same few thousands of times. */
const known = new Map<string, Bound>()
const mostKnown = 1000

function boundOf(pointer: string): Bound {
  let bound = known.get(pointer)
  if (!bound) {
    bound = fields.find(([pattern]) => pattern.test(pointer))?.[1] ?? anyNumber
    if (known.size >= mostKnown) known.clear()
    known.set(pointer, bound)
  }
  return bound
}

/**
 * What is wrong with this number at this pointer, as the end of a sentence ('must be between 0 and 1'), or null.
 */
export function outOfBounds(pointer: string, value: number): Inner | null {
  if (fixed.test(pointer)) return inner('fixedNumber', {})
  const bound = boundOf(pointer)
  const inside =
    Number.isFinite(value) &&
    value >= bound.low &&
    value <= bound.high &&
    !(bound.above && value === bound.low) &&
    !(bound.whole && !Number.isInteger(value)) &&
    !(bound.tenth && Math.abs(value * 10 - Math.round(value * 10)) > 1e-9)
  return inside ? null : inner('mustBe', { allowed: bound.words })
}
