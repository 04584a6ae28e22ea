import { describe, expect, it } from 'vitest'
import { comingDecision, knowledgeGradient, type Prospect } from '../../../src/model/picks/looks/index.ts'
import { type RatedTeam, samplePairings } from '../../../src/model/picks/scores/index.ts'
import { comingMatches } from '../../../src/model/picks/seeds/index.ts'
import { match } from '../event/matches.ts'
import { game, lots, rated } from './field.ts'

describe('the coming decision', () => {
  /** Twelve teams, t0 the strongest; of t4 little is known, the others well. */
  const form = (spread: number) => [1 - spread, 1 - spread / 3, 1 + spread / 3, 1 + spread]
  const teams: RatedTeam[] = Array.from({ length: 12 }, (_, k) =>
    rated(`t${k}`, { pier: 20 - k, form: form(k === 4 ? 0.4 : 0.05) }),
  )
  const played = (of: RatedTeam[]) => lots(of, { pairings: samplePairings({ teams: of, seed: 1 }), each: 60, sd: 12 })
  const request = {
    game,
    teams,
    lots: played(teams),
    rules: { alliances: 3, size: 3, serpentine: true, captainsInvitable: false, afterDeclining: 'captain' } as const,
    seeds: teams.map(({ team }) => team),
    perMatch: Object.fromEntries(teams.map(({ team }) => [team, 60])),
  }

  it('is whom we invite first: those who will be gone by then, or are captains, are none of it', () => {
    // We are second: the first captain takes t3, who brings most of those that are free.
    const { seed, prospects } = comingDecision({ ...request, us: 't1' })
    expect(seed).toBe(2)
    expect(prospects.map(({ team }) => team)).not.toContain('t3')
    for (const captain of ['t0', 't1', 't2']) expect(prospects.map(({ team }) => team)).not.toContain(captain)
    expect(prospects[0]?.team).toBe('t4')
    // Nothing is learnt of those who are known; of t4 there is.
    const worth = knowledgeGradient(prospects)
    const best = prospects[worth.indexOf(Math.max(...worth))]
    expect(best?.team).toBe('t4')
    // Relative spread 0.4 of 16 · 2 points against 0.05 of 15 · 2, on a curve that is nearly straight: variances as their squares.
    const [four, five] = ['t4', 't5'].map((team) => prospects.find((each) => each.team === team)!) as [
      Prospect,
      Prospect,
    ]
    const ratio = (0.4 * 32) ** 2 / (0.05 * 30) ** 2
    expect(four.variance / five.variance / ratio).toBeGreaterThan(0.8)
    expect(four.variance / five.variance / ratio).toBeLessThan(1.25)
    // A match errs by 60 points²; what is believed of t4 varies by 32² · 0.4² · (1 + 1/9) / 2 of them.
    expect(four.noise / four.variance).toBeCloseTo(60 / (32 ** 2 * 0.4 ** 2 * (10 / 18)), 6)
  })

  it('varies by what is not known of the candidate alone', () => {
    // Everybody else is as little known as can be: that changes nothing about how far t5 is.
    const vague = teams.map((each, k) => (k === 5 ? each : rated(`t${k}`, { pier: 20 - k, form: form(0.4) })))
    const of = (from: typeof request) =>
      comingDecision({ ...from, us: 't1' }).prospects.find(({ team }) => team === 't5')!.variance
    const [plain, blurred] = [of(request), of({ ...request, teams: vague, lots: played(vague) })]
    // 1,440 matches tell the slope to about a fifth; were the five others in it, it would be a hundred times as much.
    expect(blurred / plain).toBeGreaterThan(0.5)
    expect(blurred / plain).toBeLessThan(2)
  })

  it('counts us as the last captain where our rank is further down', () => {
    expect(comingDecision({ ...request, us: 't9' }).seed).toBe(3)
  })
})

describe('matches to come', () => {
  it('are those of the ranking without a result, voided ones apart; who is out beforehand counts for nothing', () => {
    const practice = { ...match(9, 'a b c', 'd e f'), id: 'p1', phase: 'practice' as const }
    const schedule = [
      match(3, 'a b* c', 'd- e f'),
      match(1, 'a b c', 'd e f'),
      match(2, 'a b c', 'd e f'),
      match(2, 'a b c', 'd e f', { id: 'q2-2', play: 2, voids: 'q2' }),
      practice,
    ]
    const coming = comingMatches(schedule, new Set(['q1']))
    expect(coming.map(({ id }) => id)).toEqual(['q2-2', 'q3'])
    expect(coming[1]?.ours).toEqual([
      { team: 'a', counts: true },
      { team: 'b', counts: false },
      { team: 'c', counts: true },
    ])
    expect(coming[1]?.theirs[0]).toEqual({ team: 'd', counts: false })
  })
})
