import type { Ground } from './ground.ts'
import { type Counts, type Layout, layoutOf, type Sums } from './tally.ts'
import type { Both, Chance, Estimated, MatchReport, Measured, RobotReport } from './types.ts'

/** All that is said about matches, from their sums. */
export function matchReport(ground: Ground, sums: Sums, seed: number): MatchReport {
  const reader = new Reader(layoutOf(ground), sums)
  const { game } = ground
  const { layout } = reader
  const holds = ground.holds.length
  const byHold = <T>(of: (k: number) => T) =>
    Object.fromEntries(
      Array.from(ground.holds, (place, h) => [ground.ids[place] as string, { ours: of(2 * h), theirs: of(2 * h + 1) }]),
    )
  return {
    replicates: sums.matches,
    seed,
    score: reader.both(layout.score),
    margin: reader.measured(layout.margin),
    win: reader.chance(sums.wins),
    tie: reader.chance(sums.ties),
    loss: reader.chance(sums.matches - sums.wins - sums.ties),
    rankingPoints: reader.both(layout.rankingPoints),
    autoPoints: reader.both(layout.autoPoints),
    finishPoints: reader.both(layout.finishPoints),
    bonuses: Object.fromEntries(
      game.bonuses.map(({ id }, b) => {
        const earned = (a: number) => reader.chance(sums.sums[layout.bonuses + 2 * b + a] as number)
        return [id, { ours: earned(0), theirs: earned(1) }]
      }),
    ),
    robots: [0, 1, 2, 3, 4, 5].map((robot) => reader.robot(ground, robot)),
    heldSeconds: byHold((k) => reader.measured(layout.held + k)),
    heldSecondsPerPiece: byHold((k) => ({
      average: reader.perPiece(layout.held + k, layout.heldPieces + k, sums.products[k] as number),
      marginal: reader.perPiece(layout.marginal + k, layout.heldPieces + k, sums.products[2 * holds + k] as number),
    })),
    distributions: {
      ours: distributionOf(sums.ours),
      theirs: distributionOf(sums.theirs),
      margin: distributionOf(sums.margins),
    },
  }
}

class Reader {
  readonly layout: Layout
  private readonly sums: Sums

  constructor(layout: Layout, sums: Sums) {
    this.layout = layout
    this.sums = sums
  }

  measured(at: number): Measured {
    const { matches, sums, squares } = this.sums
    const mean = (sums[at] as number) / matches
    const variance = matches > 1 ? Math.max(0, (squares[at] as number) - matches * mean * mean) / (matches - 1) : 0
    return { mean, sd: Math.sqrt(variance), standardError: Math.sqrt(variance / matches) }
  }

  both(at: number): Both<Measured> {
    return { ours: this.measured(at), theirs: this.measured(at + 1) }
  }

  /** The share of matches; its error from two more of each kind, so that it is never 0 (Agresti & Coull 1998). */
  chance(times: number): Chance {
    const { matches } = this.sums
    const near = (times + 2) / (matches + 4)
    return { probability: times / matches, standardError: Math.sqrt((near * (1 - near)) / (matches + 4)) }
  }

  /** A ratio of two means, with its error by the delta method. */
  perPiece(at: number, pieces: number, product: number): Estimated {
    const { matches, sums, squares } = this.sums
    const above = sums[at] as number
    const below = sums[pieces] as number
    if (below === 0) return { value: 0, standardError: 0 }
    const value = above / below
    const scatter = (squares[at] as number) - 2 * value * product + value * value * (squares[pieces] as number)
    const mean = below / matches
    return { value, standardError: Math.sqrt(Math.max(0, scatter) / matches / matches) / mean }
  }

  robot(ground: Ground, robot: number): RobotReport {
    const { layout } = this
    const by = (start: number, from: number, to: number) =>
      Object.fromEntries(
        ground.ids.slice(from, to).map((id, k) => [id, this.measured(start + robot * ground.count + from + k)]),
      )
    const goals = ground.sources + ground.goals
    return {
      points: this.measured(layout.points + robot),
      pieces: by(layout.placed, ground.sources, goals),
      finishes: by(layout.placed, goals, ground.count),
      waiting: by(layout.waited, 0, goals),
      waited: this.measured(layout.waitedInAll + robot),
      defending: this.measured(layout.defending + robot),
    }
  }
}

function distributionOf({ first, counts }: Counts): [number, number][] {
  const total = counts.reduce((sum, n) => sum + n, 0)
  return Array.from(counts.entries()).flatMap(([k, n]): [number, number][] => (n > 0 ? [[first + k, n / total]] : []))
}
