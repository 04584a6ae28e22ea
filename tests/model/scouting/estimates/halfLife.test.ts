import { describe, expect, it } from 'vitest'
import { defenceEffect, EventEstimates, halfLifeScores } from '../../../../src/model/scouting/estimates/index.ts'
import { seenIn, type TeamMatch } from '../../../../src/model/scouting/seen/index.ts'
import { game } from '../../reference.ts'
import { near } from '../statistics/close.ts'
import { Chance, record } from './world.ts'

/** An event of counts: every team's matches have these pieces. */
function eventOf(pieces: (team: number, match: number) => number) {
  const teams = Array.from({ length: 30 }, (_, t) => `t${t}`)
  const seen = new Map(
    teams.map((team, t): [string, TeamMatch[]] => [
      team,
      Array.from({ length: 10 }, (_, m) => {
        const played = { timeline: [], finish: { attempted: null, achieved: null }, attempts: 0, points: 0 }
        const goals = [{ goal: 'pier', period: 'teleop' as const, scored: pieces(t, m), missed: 0 }]
        const observation = { ...record(team, `m${m}`, played, true), counts: goals }
        return { ...seenIn(game, observation), match: `m${m}`, era: 0 }
      }),
    ]),
  )
  return new EventEstimates({ game, teams, seen })
}

describe('half-lives', () => {
  it('are told by what they would have forecast: remembering all where nothing changes', () => {
    const chance = new Chance(8, 1)
    const scores = halfLifeScores(eventOf((t) => Math.max(0, Math.round(4 + t / 5 + 2 * chance.normal()))))
    expect(scores.map(({ halfLife }) => halfLife)).toEqual([Number.POSITIVE_INFINITY, 8, 4, 2])
    const [all, , , two] = scores
    expect(all!.gain).toBe(0)
    expect(two!.gain).toBeLessThan(-2 * two!.standardError)
  })

  it('are short where teams get better all day', () => {
    const chance = new Chance(9, 1)
    const scores = halfLifeScores(eventOf((t, m) => Math.max(0, Math.round(2 + t / 10 + 1.5 * m + chance.normal()))))
    const [, , , two] = scores
    expect(two!.gain).toBeGreaterThan(2 * two!.standardError)
    expect(scores.map(({ logScore }) => logScore)).toEqual(scores.map(({ logScore }) => logScore).sort((a, b) => a - b))
  })
})

describe('the effect of defence', () => {
  const match = (received: { seconds: number; attempts: number; freeSeconds: number; freeAttempts: number }) =>
    ({ teleop: { defence: { played: 0, received } } }) as unknown as TeamMatch

  it('compares each robot with itself', () => {
    // Two kinds of robots, one twice as quick and defended longer; both try half as much per second while defended.
    const quick = match({ seconds: 60, attempts: 6, freeSeconds: 60, freeAttempts: 12 })
    const slow = match({ seconds: 20, attempts: 1, freeSeconds: 100, freeAttempts: 10 })
    const effect = defenceEffect([Array(10).fill(quick), Array(10).fill(slow)])!
    near(effect.ratio, 0.5, 1e-12)
    near(effect.slowdown, 1, 1e-12)
    expect(effect.seconds).toBe(800)
    // All matches of a kind alike: what is left of the spread is small.
    expect(effect.interval80[1] - effect.interval80[0]).toBeLessThan(0.5)
  })

  it('is not told from a few seconds', () => {
    expect(defenceEffect([[match({ seconds: 20, attempts: 1, freeSeconds: 100, freeAttempts: 9 })]])).toBeNull()
    expect(defenceEffect([])).toBeNull()
  })
})
