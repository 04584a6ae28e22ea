import { describe, expect, it } from 'vitest'
import {
  bracketOf,
  playBracket,
  playedBracket,
  seriesChance,
  TieLuck,
} from '../../../src/model/picks/playoffs/index.ts'
import type { Match, Result } from '../../../src/model/scouting/types.ts'

const alliances = ['a', 'b', 'c', 'd'].map((letter) => [1, 2, 3, 4].map((k) => `${letter}${k}`))
const side = (letter: string, sits = 4) =>
  [1, 2, 3, 4]
    .filter((k) => k !== sits)
    .map((k) => ({ team: `${letter}${k}`, counts: true, state: 'played' as const })) as unknown as Match['red']

/** 'ab' : a won against b; 'a=b': tied. The fourth robot plays in every second match. */
function played(text: string): { matches: Match[]; results: Result[] } {
  const games = text.split(' ')
  const points = (total: number) => ({ points: { total } })
  return {
    matches: games.map((game, k) => ({
      ...{ id: `m${k}`, phase: 'playoff', number: k + 1, play: 1 },
      ...{ red: side(game[0] as string, k % 2 ? 4 : 2), blue: side(game.at(-1) as string) },
    })),
    results: games.map((game, k) => ({ match: `m${k}`, red: points(90), blue: points(game[1] === '=' ? 90 : 40) })),
  }
}

const ties = bracketOf({ format: 'double', alliances: 4 })
const stands = (text: string) => playedBracket({ ties, alliances, ...played(text) })

describe('a bracket from where it stands', () => {
  it('a series goes on by the games that are won: of three, with one won, one of two is enough', () => {
    for (const p of [0.2, 0.5, 0.9]) {
      expect(seriesChance(p, 3, [1, 0])).toBeCloseTo(1 - (1 - p) ** 2, 12)
      expect(seriesChance(p, 3, [1, 1])).toBeCloseTo(p, 12)
      // Of five, 1 : 2: both of the next two.
      expect(seriesChance(p, 5, [1, 2])).toBeCloseTo(p * p, 12)
      expect(seriesChance(p, 3)).toBeCloseTo(p * p * (3 - 2 * p), 12)
    }
    expect([seriesChance(0.1, 3, [2, 0]), seriesChance(0.9, 1, [0, 1])]).toEqual([1, 0])
  })

  it('results are put where their alliances meet, whoever of the four sits out', () => {
    // 1 – 4, 2 – 3, then winners and losers; a tied game is played again.
    const { standing, ties: known, apart } = stands('ad c=b bc ab dc')
    expect(known.slice(0, 4).map(({ winner }) => winner)).toEqual([1, 2, 4, 1])
    expect(apart).toEqual([])
    // The loser of the upper part meets the winner of the lower one.
    expect(known[4]?.meets).toEqual([4, 2])
    expect(standing.slice(0, 4)).toEqual([{ 1: 1 }, { 2: 1 }, { 4: 1 }, { 1: 1 }])
    expect(stands('ad ac').apart).toEqual(['m1'])
  })

  it('what is decided stays so in every run, and a lead in the final counts', () => {
    const { standing } = stands('ad bc ab dc bd ba')
    const luck = new TieLuck(3)
    const runs = 20_000
    let won = 0
    for (let run = 0; run < runs; run++) {
      const { winner, finalists } = playBracket(ties, () => 0.5, { luck, run, standing })
      expect([...finalists].sort()).toEqual([1, 2])
      won += Number(winner === 2)
    }
    // One of two games at even chances: 3/4, to four standard errors.
    expect(Math.abs(won / runs - 0.75)).toBeLessThan(4 * Math.sqrt((0.75 * 0.25) / runs))
  })
})
