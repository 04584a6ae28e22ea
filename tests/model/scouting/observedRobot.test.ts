import { describe, expect, it } from 'vitest'
import { option as optionContract } from '../../../src/api/contracts/option.ts'
import { checkOption } from '../../../src/model/documents/checkOption.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { EventEstimates } from '../../../src/model/scouting/estimates/index.ts'
import { observedRobot } from '../../../src/model/scouting/observed/index.ts'
import { away, seen as someRobot } from '../match/observed.ts'
import { game } from '../reference.ts'
import { seenOf, truths } from './estimates/world.ts'

const shape = { teams: 16, matches: 8, seed: 77, form: 0.1, volley: 2, stops: 0.02 }
const all = truths(shape)
const estimates = new EventEstimates({ game, teams: all.map(({ team }) => team), seen: seenOf(all, shape) })
/** As many of a goal as anybody brings: the field sets no limits here. */
const roomy = {
  ...game,
  goals: game.goals.map((goal) => ({ ...goal, capacity: null, slots: 3 })),
  sources: game.sources.map((source) => ({ ...source, stock: null, slots: 3, shared: false })),
}

describe('a team as a robot of a match', () => {
  it('is an option that the contract and the checks of documents take', () => {
    for (const { team } of all.slice(0, 4)) {
      const { option } = observedRobot(estimates, team, { draws: 8 })
      expect(optionContract.safeParse(option).error?.issues ?? []).toEqual([])
      expect(checkOption(game, option)).toEqual([])
      expect(option.robot.habit!.draws).toHaveLength(8)
    }
  })

  it('tries in simulated matches the pieces that are expected of it', () => {
    const nobody = away(someRobot('nobody'))
    for (const { team } of all.slice(0, 3)) {
      const { option, factor } = observedRobot(estimates, team, { draws: 16 })
      // Trips and counts of this event tell the same: nothing has to be put right by much.
      expect(factor).toBeGreaterThan(0.85)
      expect(factor).toBeLessThan(1.15)
      const sure = structuredClone(option)
      sure.auto = null
      sure.robot.reliability = { absent: 0, stops: 0 }
      for (const entries of Object.values(sure.robot.score)) for (const entry of entries) entry.success = 1
      for (const draw of sure.robot.habit!.draws!) {
        draw.success = Object.fromEntries(Object.keys(draw.success!).map((id) => [id, 1]))
        Object.assign(draw, { absent: 0, stops: 0 })
      }
      const request = { game: roomy, ours: [sure, nobody, nobody], theirs: [nobody, nobody, nobody] }
      const { robots } = simulate({ ...request, level: 'district', replicates: 1500, seed: 5 })
      const tried = Object.values(robots[0]!.pieces).reduce((sum, { mean }) => sum + mean, 0)
      // The closed form that the factor is found with lies within a few per cent of the simulation.
      expect(Math.abs(tried / estimates.team(team).attempts.mean - 1)).toBeLessThan(0.06)
    }
  })

  it('is made of the event alone where it was never seen', () => {
    const withLate = new EventEstimates({
      game,
      teams: [...all.map(({ team }) => team), 'late'],
      seen: seenOf(all, shape),
    })
    const { option } = observedRobot(withLate, 'late', { draws: 4 })
    expect(checkOption(game, option)).toEqual([])
    expect(Object.keys(option.robot.score).sort()).toEqual(['gantry', 'pier'])
  })
})
