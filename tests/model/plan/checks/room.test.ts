import { describe, expect, it } from 'vitest'
import { plan } from '../../../../src/model/plan/index.ts'
import { bareRobot, fixed, load, optionFor, smallGame } from './smallGame.ts'

/** One score leg with a load in hand and room for some of it, then the match is over. */
function onlyLeg(rules: { load: number; room: number | null; success: number; each: boolean; teleop: number }) {
  const game = smallGame({ teleop: rules.teleop, goals: [{ id: 'goal', points: 3, capacity: rules.room }] })
  const place = { id: 'place', name: 'Place', duration: fixed(0.5), after: ['drive'], each: rules.each }
  const robot = bareRobot({
    carries: { piece: rules.load },
    preload: load(rules.load),
    score: { goal: [{ stages: [place], spots: 'any', success: rules.success }] },
  })
  return plan(game, optionFor(game, robot))
}

// Worked by hand from the binomial distribution, each piece a fair coin.
describe('a load on a goal with little room', () => {
  it('places min(hits, room): three coins on two places make (3 · 1 + 4 · 2) / 8 pieces', () => {
    const report = onlyLeg({ load: 3, room: 2, success: 0.5, each: false, teleop: 5 })
    expect(report.expected.goals['goal']!.pieces).toBeCloseTo(11 / 8, 9)
    expect(report.expected.total).toBeCloseTo(33 / 8, 9)
    expect(new Map(report.pieces['goal']).get(2)).toBeCloseTo(4 / 8, 9)
  })

  it('without a limit places every hit: 3 · ½', () => {
    const report = onlyLeg({ load: 3, room: null, success: 0.5, each: false, teleop: 5 })
    expect(report.expected.goals['goal']!.pieces).toBeCloseTo(1.5, 9)
  })

  it('counts one by one what is placed before the buzzer: two of three at 0.5 s each in 1.2 s', () => {
    expect(onlyLeg({ load: 3, room: null, success: 0.5, each: true, teleop: 1.2 }).expected.total).toBeCloseTo(3, 9)
    // All at the end would be at 0.5 s for the whole load where the stage is done once.
    expect(onlyLeg({ load: 3, room: null, success: 0.5, each: false, teleop: 1.2 }).expected.total).toBeCloseTo(4.5, 9)
  })

  it('gives the third piece a place only if one of the first two missed: room for two, all in time', () => {
    // Expected points 3 · (½ + ½ + ½ · P(at most one hit of two) = ½ · ¾).
    const report = onlyLeg({ load: 3, room: 2, success: 0.5, each: true, teleop: 5 })
    expect(report.expected.total).toBeCloseTo(3 * (0.5 + 0.5 + 0.375), 9)
  })
})
