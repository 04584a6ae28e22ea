import { describe, expect, it } from 'vitest'
import { plan } from '../../../../src/model/plan/index.ts'
import type { Action, PlanReport } from '../../../../src/model/plan/types.ts'
import { bareRobot, collecting, finishing, fixed, optionFor, scoring, smallGame } from './smallGame.ts'

interface Race {
  ticks: number
  /** One entry per equally likely length of a cycle. */
  cycle: number[]
  points: number
  terminal: { ticks: number; points: number }
}

/**
 * A tick is a second. The last tenth of a cycle is the score leg, so that the robot may also decide with the piece in
 * hand; a terminal of whole seconds gains nothing from that tenth, so that the problem stays the one of the source.
 */
function solve(race: Race): PlanReport {
  const game = smallGame({
    teleop: race.ticks,
    sources: [{ id: 'source' }],
    goals: [{ id: 'goal', points: race.points }],
    finishes: [{ id: 'finish', points: race.terminal.points }],
  })
  const robot = bareRobot({
    collect: {
      source: collecting({ kind: 'samples', seconds: race.cycle.map((ticks) => Math.round(ticks * 10 - 1) / 10) }),
    },
    score: { goal: scoring(fixed(0.1)) },
    finish: { finish: finishing(fixed(race.terminal.ticks)) },
  })
  return plan(game, optionFor(game, robot))
}

function actionAt(report: PlanReport, ticksLeft: number): Action['kind'] {
  const entry = report.policy.find(({ node }) => node.at === 'goal.spot' && node.load === null)
  const band = entry?.bands.find(({ from, to }) => ticksLeft < from - 1e-9 && ticksLeft > to - 1e-9)
  return band?.action.kind ?? 'stop'
}

// Exact rationals by backward induction (Python fractions); method: Bellman (1957), Puterman, Markov Decision
// Processes (1994) chapter 4. Cases 3.8a-c of the list of outside checks. Its cases 3.1 to 3.5 can not be said as a plan:
// a candidate, an offer or a ticket is seen before it is taken or left (3.1 to 3.4), and a machine's next state is drawn
// (3.5), where here a leg's chance decides only when it ends and how many pieces count.
describe('random cycles that can not be interrupted, with a terminal reward', () => {
  const races: { name: string; race: Race; exact: number; stops: number[]; finishes: number[] }[] = [
    {
      name: '20 ticks, cycles of 3, 4, 4 or 6',
      race: { ticks: 20, cycle: [3, 4, 4, 6], points: 2, terminal: { ticks: 5, points: 8 } },
      exact: 3471 / 256,
      stops: [1, 2],
      finishes: [5, 6, 7, 8],
    },
    {
      name: '30 ticks, cycles of 5 or 8',
      race: { ticks: 30, cycle: [5, 8, 5, 8], points: 3, terminal: { ticks: 6, points: 5 } },
      exact: 233 / 16,
      stops: [1, 2, 3, 4],
      finishes: [6, 7, 8, 9, 10],
    },
    {
      name: '12 ticks, cycles of 4, 5 or 7',
      race: { ticks: 12, cycle: [4, 5, 7], points: 4, terminal: { ticks: 3, points: 4 } },
      exact: 28 / 3,
      stops: [1, 2],
      finishes: [3, 4, 5, 6],
    },
  ]

  it.each(races)('$name: the value', ({ race, exact }) => {
    expect(solve(race).expected.total).toBeCloseTo(exact, 9)
  })

  it.each(races)('$name: the action at every whole tick that can be reached', ({ race, stops, finishes }) => {
    const report = solve(race)
    // The robot stands at the goal only after a cycle: from the longest time left on, nothing is to be said there.
    for (let left = 1; left <= race.ticks - Math.min(...race.cycle); left++) {
      const expected = stops.includes(left) ? 'stop' : finishes.includes(left) ? 'finish' : 'collect'
      expect(actionAt(report, left), `${left} ticks left`).toBe(expected)
    }
  })
})
