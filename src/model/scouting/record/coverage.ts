import { paired } from '../statistics/index.ts'
import { centralInterval } from './histogram.ts'
import type { Histogram } from './types.ts'

export const levels = [0.5, 0.8, 0.95] as const

/** How many scores lay where the forecast said that so many would. */
export interface Coverage {
  level: number
  scores: number
  inside: number
  /** How many the forecasts themselves expect: somewhat more than `level` of them, because points are whole. */
  expected: number
  /** 95 % interval of the share inside less the share expected, by matches; null with fewer than `fewest`. */
  off: readonly [number, number] | null
}

/** Matches from which an interval is told: below, Student's interval is wider than what it is about. */
export const fewest = 5

export interface Scored {
  forecast: Histogram
  observed: number
}

/** @param matches both scores of each */
export function coverageOf(matches: readonly (readonly Scored[])[], level: number): Coverage {
  const told = matches.map((scores) => scores.map((each) => insideOf(each, level)))
  const all = told.flat()
  const sum = (of: readonly { inside: number; mass: number }[], which: 'inside' | 'mass') =>
    of.reduce((total, each) => total + each[which], 0)
  const shares = (which: 'inside' | 'mass') => told.map((own) => sum(own, which) / own.length)
  const difference = matches.length >= fewest ? paired(shares('inside'), shares('mass')) : null
  return {
    level,
    scores: all.length,
    inside: sum(all, 'inside'),
    expected: sum(all, 'mass'),
    off: difference && [difference.low, difference.high],
  }
}

function insideOf({ forecast, observed }: Scored, level: number): { inside: number; mass: number } {
  const { low, high, mass } = centralInterval(forecast, level)
  const points = Math.round(observed)
  return { inside: points >= low && points <= high ? 1 : 0, mass }
}
