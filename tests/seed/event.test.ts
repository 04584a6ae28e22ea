import { describe, expect, test } from 'vitest'
import { breakwater, seededEvent } from '../../seed/index.ts'
import { row as rowContract } from '../../src/api/contracts/scouting/index.ts'
import { checkResults, checkSchedule, earnedIn, rankEvent, slotsOf } from '../../src/model/event/index.ts'

const { event, matches, results, played, records } = seededEvent()

describe('the event of the demo', () => {
  test('is always the same', () => {
    expect(seededEvent()).toEqual({ event, matches, results, played, records })
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

  test('has records that the contract takes, each with its own id and in the order of its device', () => {
    for (const row of records) expect(rowContract.parse(row)).toEqual(row)
    expect(new Set(records.map(({ id }) => id)).size).toBe(records.length)
    for (const device of new Set(records.map(({ device }) => device))) {
      const own = records.filter((row) => row.device === device).map(({ sequence }) => sequence)
      expect(own).toEqual(own.map((_, index) => index + 1))
    }
  })

  test('has records of nearly all robots that agree with the officials, but for one with two goals swapped', () => {
    const seen = records.flatMap((row) => (row.kind === 'observation' ? [row.body] : []))
    const scored = (all: typeof seen, goal: string) =>
      all
        .flatMap(({ timeline = [], counts = [] }) => [
          ...timeline.filter(({ what }) => what === 'scored').map((each) => [each.goal, 1] as const),
          ...counts.map((each) => [each.goal, each.scored] as const),
        ])
        .reduce((sum, [id, n]) => sum + (id === goal ? n : 0), 0)
    const differing = played.flatMap(({ match, result, performances }) =>
      (['red', 'blue'] as const).flatMap((alliance) => {
        const teams = performances.filter((each) => each.alliance === alliance).map(({ team }) => team)
        const own = seen.filter((body) => body.match === match.id && teams.includes(body.team))
        // Three records of three robots can be added up.
        if (own.length !== 3 || new Set(own.map(({ team }) => team)).size !== 3) return []
        const agree = ['piers', 'gantry', 'lightship'].every(
          (goal) => scored(own, goal) === result[alliance].pieces![goal],
        )
        return agree ? [] : [`${match.id} ${alliance}`]
      }),
    )
    expect(differing).toEqual(['qualification-17 red'])
    expect(seen.length).toBeGreaterThanOrEqual(6 * played.length - 3)
    expect(seen.filter(({ counts }) => counts)).toHaveLength(1)
    for (const { timeline = [] } of seen) {
      expect(timeline.map(({ elapsed }) => elapsed)).toEqual(
        timeline.map(({ elapsed }) => elapsed).toSorted((a, b) => a - b),
      )
      expect(timeline.at(-1)?.elapsed ?? 0).toBeLessThanOrEqual(152)
    }
  })
})
