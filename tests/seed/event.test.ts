import { describe, expect, test } from 'vitest'
import { breakwater, seededEvent } from '../../seed/index.ts'
import { checkResults, checkSchedule, earnedIn, rankEvent, slotsOf } from '../../src/model/event/index.ts'

const { event, matches, results, played } = seededEvent()

describe('the event of the demo', () => {
  test('is always the same', () => {
    expect(seededEvent()).toEqual({ event, matches, results, played })
  })

  test('has a schedule and results in which no check finds anything wrong', () => {
    expect(checkSchedule(event, matches)).toEqual([])
    // The result that no longer counts is named as such.
    expect(checkResults(breakwater.game, matches, results).map(({ said }) => said.code)).toEqual(['resultOfVoided'])
  })

  test('lets each of 25 teams play eleven matches that count, and none twice in a row', () => {
    const plays = matches.filter(({ play }) => play === 1)
    expect(plays).toHaveLength(46)
    for (const { team } of event.teams) {
      const own = plays.filter((match) => slotsOf(match).some(({ slot }) => slot.team === team && slot.counts))
      expect(own, team).toHaveLength(11)
    }
    const apart = plays.flatMap(slotsOf).filter(({ slot }) => !slot.counts)
    expect(apart).toHaveLength(1)
    plays.slice(1).forEach((match, index) => {
      const before = new Set(slotsOf(plays[index]!).map(({ slot }) => slot.team))
      expect(slotsOf(match).filter(({ slot }) => before.has(slot.team))).toEqual([])
    })
  })

  test('has one replay, one robot that did not come and one that was disqualified', () => {
    const states = matches.flatMap(slotsOf).map(({ slot }) => slot.state)
    expect(states.filter((state) => state === 'absent')).toHaveLength(1)
    expect(states.filter((state) => state === 'disqualified')).toHaveLength(1)
    const ranking = rankEvent({ game: breakwater.game, event, matches, results, seed: 1 })
    expect(ranking).toMatchObject({ counted: 23, voided: 1, waiting: 23, untold: [] })
    const [first, last] = [ranking.rows[0]!, ranking.rows.at(-1)!]
    expect(first.values[0]).toBeGreaterThan(last.values[0]! + 1.5)
  })

  test('has totals and bonuses that follow from what its robots did, by the rules’ own numbers', () => {
    for (const { match, result, performances } of played) {
      for (const alliance of ['red', 'blue'] as const) {
        const own = performances.filter((each) => each.alliance === alliance)
        const side = result[alliance]
        const piers = own.reduce((sum, { auto, teleop }) => sum + auto.piers + teleop.piers, 0)
        const gantry = own.reduce((sum, { auto, teleop }) => sum + auto.gantry + teleop.gantry, 0)
        expect(side.pieces).toMatchObject({ piers, gantry })
        expect(gantry).toBeLessThanOrEqual(12)
        const { total, autonomous = 0, goals = 0, finishes = 0, fromFouls = 0 } = side.points
        // A string of moorings pays 4 for every three at the piers with three at the gantry.
        expect(total, match.id).toBe(
          autonomous + goals + finishes + fromFouls + 4 * Math.floor(Math.min(piers, gantry) / 3),
        )
        const { bonuses, ...untold } = side
        const told = earnedIn(breakwater.game, 'local', { ...result, [alliance]: untold })[alliance]
        // What a result does not tell is how long the lightship was held.
        expect(told.untold).toEqual(['lit'])
        expect(bonuses?.filter((id) => id !== 'lit')).toEqual(told.bonuses)
      }
    }
  })
})
