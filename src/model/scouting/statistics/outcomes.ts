import { poissonPmf } from './distributions.ts'
import { normalCdf } from './normal.ts'

export interface Outcome {
  win: number
  tie: number
  loss: number
}

/** Two independent Poisson scores. Source: Skellam, Journal of the Royal Statistical Society 109 (1946), 296. */
export function poissonOutcome(ours: number, theirs: number): Outcome {
  const most = Math.ceil(Math.max(ours, theirs) + 12 * Math.sqrt(Math.max(ours, theirs)) + 30)
  let [win, tie, below] = [0, 0, 0]
  for (let k = 0; k <= most; k++) {
    const own = poissonPmf(k, ours)
    const other = poissonPmf(k, theirs)
    win += own * below
    tie += own * other
    below += other
  }
  return { win, tie, loss: 1 - win - tie }
}

/** Chance that one normal number exceeds another. Source: Thurstone, Psychological Review 34 (1927), 273–286. */
export const normalWin = (ours: { mean: number; sd: number }, theirs: { mean: number; sd: number }): number =>
  normalCdf((ours.mean - theirs.mean) / Math.hypot(ours.sd, theirs.sd))

export interface Finishing {
  /** Chance of each rank from the first, ties split evenly over the places tied for. */
  ranks: number[]
  /** Chance of each number of wins from none. */
  wins: number[]
  expectedRank: number
  soleFirst: number
}

/**
 * A round robin of few, exact by all its outcomes.
 * @param beats beats[i][j]: chance that i beats j; what stands above the diagonal is read
 */
export function roundRobin(beats: readonly (readonly number[])[]): { each: Finishing[]; tieForFirst: number } {
  const n = beats.length
  const games = beats.flatMap((_, i) => beats.slice(i + 1).map((_, k) => [i, i + 1 + k] as const))
  const zeros = (length: number) => new Array<number>(length).fill(0)
  const each = beats.map((): Finishing => ({ ranks: zeros(n), wins: zeros(n), expectedRank: 0, soleFirst: 0 }))
  let tieForFirst = 0
  for (let outcome = 0; outcome < 2 ** games.length; outcome++) {
    const wins = zeros(n)
    let chance = 1
    for (const [g, [i, j]] of games.entries()) {
      const first = ((outcome >> g) & 1) === 0
      chance *= first ? beats[i]![j]! : 1 - beats[i]![j]!
      wins[first ? i : j]! += 1
    }
    const most = Math.max(...wins)
    const leaders = wins.filter((own) => own === most).length
    if (leaders > 1) tieForFirst += chance
    for (const [i, own] of wins.entries()) {
      const better = wins.filter((other) => other > own).length
      const equal = wins.filter((other) => other === own).length
      const finishing = each[i] as Finishing
      for (let rank = better; rank < better + equal; rank++) finishing.ranks[rank]! += chance / equal
      finishing.wins[own]! += chance
      finishing.expectedRank += chance * (better + (equal + 1) / 2)
      if (own === most && leaders === 1) finishing.soleFirst += chance
    }
  }
  return { each, tieForFirst }
}
