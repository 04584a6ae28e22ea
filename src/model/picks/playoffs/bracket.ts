/** Where somebody in a tie comes from: an alliance by its number, or the winner or loser of an earlier tie by its place. */
export type From = { kind: 'alliance'; number: number } | { kind: 'winner' | 'loser'; tie: number }

/** Two alliances that play until one has won most of so many games. */
export interface Tie {
  part: 'upper' | 'lower' | 'final'
  /** From 1, within its part. */
  round: number
  games: number
  from: readonly [From, From]
}

export interface Format {
  /** double: out after two lost ties, the final apart. bestOf: out after one. */
  format: 'double' | 'bestOf'
  alliances: number
  /** Games of a tie, odd; in double elimination of the final alone, where common practice is three. */
  games?: number
}

type Entry = From | null

/** Ties in an order in which they can be played; the last one is the final. Alliances without an opponent go on unplayed. */
export function bracketOf({ format, alliances, games = 3 }: Format): Tie[] {
  const ties: Tie[] = []
  const each = format === 'double' ? 1 : games
  /** Both are there: a tie. One: it goes on. */
  const meet = (part: Tie['part'], round: number, [a, b]: readonly [Entry, Entry]): { winner: Entry; loser: Entry } => {
    if (!a || !b) return { winner: a ?? b, loser: null }
    const tie = ties.push({ part, round, games: part === 'final' ? games : each, from: [a, b] }) - 1
    return { winner: { kind: 'winner', tie }, loser: { kind: 'loser', tie } }
  }
  const inPairs = (part: Tie['part'], round: number, entries: readonly Entry[]) =>
    Array.from({ length: entries.length / 2 }, (_, k) =>
      meet(part, round, [entries[2 * k] as Entry, entries[2 * k + 1] as Entry]),
    )
  let upper: Entry[] = placed(alliances)
  let lower: Entry[] = []
  for (let round = 1; upper.length > 1; round++) {
    if (format === 'bestOf' && upper.length === 2) break
    const played = inPairs('upper', round, upper)
    upper = played.map(({ winner }) => winner)
    if (format === 'bestOf') continue
    const losers = played.map(({ loser }) => loser)
    if (round === 1) {
      lower = losers.length > 1 ? inPairs('lower', 1, losers).map(({ winner }) => winner) : losers
      continue
    }
    // Losers come in from the other end, so that those who met just now do not meet again at once.
    lower = lower.map((own, k) => meet('lower', 2 * round - 2, [own, losers.toReversed()[k] as Entry]).winner)
    if (lower.length > 1) lower = inPairs('lower', 2 * round - 1, lower).map(({ winner }) => winner)
  }
  const last: readonly [Entry, Entry] =
    format === 'double' ? [upper[0] as Entry, lower[0] as Entry] : [upper[0] as Entry, upper[1] as Entry]
  meet('final', 1, last)
  return ties
}

/** Numbers so that the best two can meet in the final only, the best four in the round before, and so on; null where nobody is. */
function placed(count: number): Entry[] {
  let numbers = [1, 2]
  while (numbers.length < count) numbers = numbers.flatMap((number) => [number, 2 * numbers.length + 1 - number])
  return numbers.map((number) => (number <= count ? { kind: 'alliance', number } : null))
}

/** Chance to win most of so many games, each with the same chance, from how many each has won already. */
export function seriesChance(game: number, games: number, [own, other]: readonly [number, number] = [0, 0]): number {
  const needed = (games + 1) / 2
  if (own >= needed) return 1
  if (other >= needed) return 0
  // As if all games were played: whoever has won most by then had them first.
  const left = games - own - other
  let sum = 0
  let ways = 1
  for (let won = left; won >= needed - own; won--) {
    sum += ways * game ** won * (1 - game) ** (left - won)
    ways = (ways * won) / (left - won + 1)
  }
  return sum
}
