import { describe, expect, it } from 'vitest'
import { plan } from '../../../../src/model/plan/index.ts'
import { bareRobot, collecting, finishing, fixed, optionFor, smallGame } from './smallGame.ts'

/**
 * Cycles that can be left at any time, each ending at a rate of 0.1 a second: a try of 0.2 s (half of it to take the
 * piece) that scores with a chance of 0.02. What a try brings is linear in its chance, so that the expectation is exact.
 */
function withTerminal(points: number) {
  const game = smallGame({
    teleop: 135,
    sources: [{ id: 'source' }],
    goals: [{ id: 'goal', points: 1 }],
    finishes: [{ id: 'finish', points }],
  })
  const robot = bareRobot({
    collect: { source: collecting(fixed(0.1)) },
    score: { goal: [{ whole: fixed(0.1), spots: 'any', success: 0.02 }] },
    finish: { finish: finishing(fixed(20)) },
  })
  return plan(game, optionFor(game, robot)).expected
}

// Memorylessness, Ross, Stochastic Processes (1996), check 3.9 of the list: the terminal takes 20 s, in which cycling
// would bring 2 points, so it is done if and only if it pays more; with 5 the match is worth 0.1 · 115 + 5.
describe('cycles without memory, with a terminal reward that takes 20 s', () => {
  it('are worth 16.5 with a terminal of 5 points', () => {
    expect(withTerminal(5).total).toBeCloseTo(16.5, 9)
  })

  it('are left for the terminal where it pays more than the 2 points that its time would bring, and only there', () => {
    const [less, more] = [withTerminal(1.99), withTerminal(2.01)]
    expect(less.finishes['finish']!.attempts).toBe(0)
    expect(less.total).toBeCloseTo(13.5, 9)
    expect(more.finishes['finish']!.attempts).toBeCloseTo(1, 9)
    expect(more.total).toBeCloseTo(13.51, 9)
  })
})
