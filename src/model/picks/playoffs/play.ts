import { philox } from '../../random/index.ts'
import { seriesChance, type Tie } from './bracket.ts'

/** Chance that the first of two alliances (from 1) wins a game. */
export type GameChance = (first: number, second: number) => number

/** Random numbers of a bracket: the same for the same run and tie, whoever meets there. */
export class TieLuck {
  private readonly key: readonly [number, number]
  private readonly words = new Uint32Array(4)

  constructor(seed: number) {
    this.key = [seed % 2 ** 32, Math.floor(seed / 2 ** 32)]
  }

  uniform(run: number, tie: number): number {
    philox([run, tie >> 2, 0, 7], this.key, this.words)
    return ((this.words[tie & 3] as number) + 0.5) / 2 ** 32
  }
}

/** Games of ties that are played already: wins by number of the alliance, by place of the tie. */
export type BracketStanding = readonly ({ readonly [alliance: number]: number } | undefined)[]

/** Plays a bracket once, from where it stands; who comes first in the final, and who wins it. A tied game is played again, so that a tie counts half. */
export function playBracket(
  ties: readonly Tie[],
  chance: GameChance,
  { luck, run, standing = [] }: { luck: TieLuck; run: number; standing?: BracketStanding },
): { winner: number; finalists: readonly [number, number] } {
  const winners: number[] = []
  const losers: number[] = []
  let finalists: readonly [number, number] = [1, 1]
  for (const [k, { from, games }] of ties.entries()) {
    const [a, b] = from.map((each) =>
      each.kind === 'alliance' ? each.number : ((each.kind === 'winner' ? winners : losers)[each.tie] as number),
    ) as [number, number]
    // The lower number first, so that the same luck favours the same alliance wherever it comes from.
    const [first, second] = a < b ? [a, b] : [b, a]
    const won =
      luck.uniform(run, k) <
      seriesChance(chance(first, second), games, [standing[k]?.[first] ?? 0, standing[k]?.[second] ?? 0])
    winners[k] = won ? first : second
    losers[k] = won ? second : first
    finalists = [a, b]
  }
  return { winner: winners.at(-1) as number, finalists }
}
