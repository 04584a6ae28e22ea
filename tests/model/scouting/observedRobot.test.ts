import { describe, expect, it } from 'vitest'
import { option as optionContract } from '../../../src/api/contracts/option.ts'
import { checkOption } from '../../../src/model/documents/checkOption.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { EventEstimates } from '../../../src/model/scouting/estimates/index.ts'
import { observedRobot } from '../../../src/model/scouting/observed/index.ts'
import { away, seen as someRobot } from '../match/observed.ts'
import { game } from '../reference.ts'
import { expectationOf, seenOf, type Truth, truths } from './estimates/world.ts'

const shape = { teams: 16, matches: 8, seed: 77, form: 0.1, volley: 2, stops: 0.02 }
const all = truths(shape)
const estimates = new EventEstimates({ game, teams: all.map(({ team }) => team), seen: seenOf(all, shape) })
/** As many of a goal as anybody brings: the field sets no limits here. */
const roomy = {
  ...game,
  goals: game.goals.map((goal) => ({ ...goal, capacity: null, slots: 3 })),
  sources: game.sources.map((source) => ({ ...source, stock: null, slots: 3, shared: false })),
}

/** Pieces that it tries in simulated matches, alone and to the end: all that it tries succeed. */
function triedBy(option: Option, replicates = 1500): number {
  const nobody = away(someRobot('nobody'))
  const sure = structuredClone(option)
  sure.auto = null
  sure.robot.reliability = { absent: 0, stops: 0 }
  for (const entries of Object.values(sure.robot.score)) for (const entry of entries) entry.success = 1
  for (const draw of sure.robot.habit!.draws!) {
    draw.success = Object.fromEntries(Object.keys(draw.success!).map((id) => [id, 1]))
    Object.assign(draw, { absent: 0, stops: 0 })
  }
  const request = { game: roomy, ours: [sure, nobody, nobody], theirs: [nobody, nobody, nobody] }
  const { robots } = simulate({ ...request, level: 'district', replicates, seed: 5 })
  return Object.values(robots[0]!.pieces).reduce((sum, { mean }) => sum + mean, 0)
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
    for (const { team } of all.slice(0, 3)) {
      const { option, factor } = observedRobot(estimates, team, { draws: 16 })
      // Trips and counts of this event tell the same: nothing has to be put right by much.
      expect(factor).toBeGreaterThan(0.85)
      expect(factor).toBeLessThan(1.15)
      const tried = triedBy(option)
      // The closed form that the factor is found with lies within a few per cent of the simulation.
      expect(Math.abs(tried / estimates.team(team).attempts.mean - 1)).toBeLessThan(0.06)
    }
  })

  it('that places five pieces at once on long trips is forecast to place as many as it does, within 3 %', () => {
    const volleys = truths({ teams: 20, matches: 12, seed: 31 }).map(
      (truth): Truth => ({ ...truth, trip: 14, pieces: [0, 0, 0, 0, 1], stops: 0 }),
    )
    const seen = seenOf(volleys, { matches: 12, seed: 31 })
    const event = new EventEstimates({ game, teams: [...seen.keys()], seen })
    const forecast = volleys.map(({ team }) => triedBy(observedRobot(event, team, { draws: 16 }).option, 300))
    const truth = expectationOf(volleys[0]!, 3, 4000).attempts
    expect(Math.abs(forecast.reduce((sum, n) => sum + n, 0) / volleys.length / truth - 1)).toBeLessThan(0.03)
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
