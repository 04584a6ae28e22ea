import { describe, expect, it, test } from 'vitest'
import type { Option, Role } from '../../../src/model/documents/types.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { candidatesFor } from '../../../src/model/match/lineup/candidates.ts'
import {
  type Lineup,
  LineupPlayer,
  type LineupRequest,
  lineup,
  matchesOf,
  searchLineups,
} from '../../../src/model/match/lineup/index.ts'
import { allLineups, rivalOf } from '../../../src/model/match/lineup/lineups.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game, optionNamed } from '../reference.ts'

const ours = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionNamed)
const rivals = [
  ['cormorant-always', 'petrel-pier', 'gannet-skip'].map(optionNamed),
  ['dunlin-guess', 'petrel-best', 'gannet-keeper'].map(optionNamed),
]

/** What each robot may do: a few roles that differ in goals and finishes. */
const roleOf = (option: Option, change: Partial<Role>): Role => ({ ...option.role, ...change })
const request: LineupRequest = {
  game,
  ours,
  theirs: rivals,
  weights: [3, 1],
  roles: [
    [roleOf(ours[0]!, { finishes: ['davit'] }), roleOf(ours[0]!, { finishes: ['drydock'], goals: ['gantry'] })],
    [roleOf(ours[1]!, { goals: ['pier'] }), roleOf(ours[1]!, { defend: { mark: 0, from: 120, until: 30 } })],
    [roleOf(ours[2]!, { finishes: ['drydock'] })],
  ],
  seed: 4,
  objective: 'win',
}

describe('the settings of the rivals', () => {
  it('come up as often as their weights say, evenly among the matches', () => {
    for (const many of [40, 400, 4000]) {
      const second = Array.from({ length: many }, (_, match) => rivalOf(request, match)).filter((k) => k === 1).length
      // A sequence of the golden ratio's multiples is off by less than about ln n matches.
      expect(Math.abs(second - many / 4)).toBeLessThan(2 + Math.log(many))
    }
  })
})

describe('a search for the best line-up', () => {
  test('finds what playing all of them out finds, and says what the runner-up loses by the same luck', {
    timeout: 240_000,
  }, async () => {
    const player = new LineupPlayer(request)
    let matches = 0
    const rounds: number[] = []
    const found = await searchLineups(request, {
      lineups: candidatesFor(request),
      play: async (lineups, from, to) => {
        matches += lineups.length * (to - from)
        return lineups.map((each) => player.play(each, from, to))
      },
      after: (report, left) => rounds.push(left, report.replicates),
    })
    expect(found.candidates).toBe(4)
    // Four meet 250 matches, the better two go on to 20,000: what a search says of its length is what it plays.
    expect(rounds).toEqual([2, 250])
    expect(matches).toBe(4 * 250 + 2 * 19_750)
    expect(matches).toBe(matchesOf(4))
    expect(matchesOf(64)).toBe(64 * 250 + 32 * 250 + 16 * 500 + 8 * 1000 + 4 * 2000 + 2 * 16_000)
    const all = allLineups(request).map((each) => player.play(each, 0, found.replicates))
    const means = all.map((values) => values.reduce((sum, value) => sum + value, 0) / values.length)
    const best = means.indexOf(Math.max(...means))
    const roles = allLineups(request)[best]!.map((role, i) => request.roles[i]![role])
    expect(found.best.roles).toEqual(roles)
    expect(found.best.value.mean).toBeCloseTo(means[best]!, 12)
    const second = means.toSorted((a, b) => b - a)[1]!
    expect(found.loses!.mean).toBeCloseTo(means[best]! - second, 12)
    // Met by the same luck, the two differ by far less than if each had luck of its own.
    const apart = Math.hypot(found.best.value.standardError, found.runnerUp!.value.standardError)
    expect(found.loses!.standardError).toBeLessThan(0.9 * apart)
    expect(found.worst.value).toBeLessThanOrEqual(found.best.value.mean)
  })

  test('a line-up against one setting is worth what the match says', () => {
    const only = { ...request, theirs: [rivals[1]!], weights: undefined }
    const lineupOf: Lineup = [1, 1, 0]
    const values = new LineupPlayer(only).play(lineupOf, 0, 1000)
    const own = ours.map((option, i) => ({ ...option, role: request.roles[i]![lineupOf[i]!]! }))
    const { win, tie } = simulate({ game, ours: own, theirs: rivals[1]!, replicates: 1000, seed: request.seed })
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    expect(mean).toBeCloseTo(win.probability + tie.probability / 2, 12)
  })

  test('with one line-up there is no runner-up', { timeout: 120_000 }, async () => {
    const settled = { ...request, roles: request.roles.map((own) => own.slice(0, 1)) }
    expect(await lineup(settled)).toMatchObject({ runnerUp: null, loses: null, candidates: 1 })
  })

  test.each([1, 2, 3, 4])('among %i line-ups plays as many matches as was said before', async (count) => {
    let played = 0
    const some = allLineups(request).slice(0, count)
    await searchLineups(request, {
      lineups: some,
      play: async (lineups, from, to) => {
        played += lineups.length * (to - from)
        return lineups.map(() => new Float64Array(to - from))
      },
    })
    expect(matchesOf(count)).toBe(played)
    // By hand: two go on to 20,000; of three or four half are left behind after 250 matches.
    expect(played).toBe([20_000, 40_000, 40_250, 40_500][count - 1])
  })

  test.runIf(inLongForm)('of more than 64 the closed form keeps the best', { timeout: 600_000 }, async () => {
    const goals = [['pier'], ['gantry'], ['pier', 'gantry'], ['lightship'], ['pier', 'gantry', 'lightship']]
    const many = { ...request, roles: ours.map((option) => goals.map((own) => roleOf(option, { goals: own }))) }
    expect(allLineups(many).length).toBe(125)
    const kept = candidatesFor(many)
    expect(kept.length).toBe(64)
    const player = new LineupPlayer(many)
    const worth = (each: Lineup) => player.play(each, 0, 1000).reduce((sum, value) => sum + value, 0) / 1000
    const left = allLineups(many).filter((each) => !kept.some((other) => other.join() === each.join()))
    const best = Math.max(...kept.map(worth))
    // Three standard errors of 1,000 matches, met by the same luck.
    for (const each of left) expect(worth(each)).toBeLessThan(best + 0.03)
  })
})
