import type { Duration } from '../../../../src/model/documents/types.ts'
import { plan } from '../../../../src/model/plan/index.ts'
import { bareRobot, load, optionFor, smallGame } from './smallGame.ts'

/** Probability of each number of renewals. */
export type Chances = Map<number, number>

/** Renewals inside one leg: a load of pieces, each released after its own draw, standing at the goal already. */
export function releases(duration: Duration, time: number, most: number): Chances {
  const game = smallGame({ teleop: time, goals: [{ id: 'goal', points: 1 }] })
  const release = { id: 'release', name: 'Release', duration, after: ['drive'], each: true }
  const robot = bareRobot({
    carries: { piece: most },
    preload: load(most),
    score: { goal: [{ stages: [release], spots: 'any', success: 1 }] },
  })
  return new Map(plan(game, optionFor(game, robot)).pieces['goal'])
}

/**
 * Times are shared between the grid's points in proportion to nearness, which keeps every mean, but lets a renewal just
 * after t count by t. Over the horizons t and t - 0.1 that effect cancels to second order, so that the mean of both can
 * be held against continuous time.
 */
export function atTime(count: (time: number) => Chances, time: number): Chances {
  const late = count(time)
  const early = count(Math.round(time * 10 - 1) / 10)
  const numbers = new Set([...late.keys(), ...early.keys()])
  return new Map([...numbers].map((n) => [n, ((late.get(n) ?? 0) + (early.get(n) ?? 0)) / 2]))
}

export const meanOf = (chances: Chances) => [...chances].reduce((sum, [n, p]) => sum + n * p, 0)
