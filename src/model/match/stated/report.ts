import type { Ground } from '../ground.ts'
import { matchReport } from '../report.ts'
import { layoutOf, type Sums } from '../tally.ts'
import { pairsOf } from './play.ts'
import {
  type Mean,
  measures,
  type StatedOption,
  type StatedReport,
  type StatedRequest,
  type StatedSums,
} from './types.ts'

/**
 * What matches with a stated field say about options. A difference's error is that of its mean over matches that both
 * options played on the same luck: smaller than that of two means apart, as far as luck moves both alike.
 *
 * Source: common random numbers, e.g. Law, Simulation Modeling and Analysis (5th ed. 2015), section 11.2.
 */
export function statedReport(
  request: Pick<StatedRequest, 'options' | 'seed'>,
  ground: Ground,
  sums: StatedSums,
): StatedReport {
  const ids = request.options.map(({ id }) => id)
  const means = sums.options.map((of) => meansOf(ground, of))
  const matches = sums.options[0]!.matches
  const differences: StatedReport['differences'] = Object.fromEntries(ids.map((id) => [id, {}]))
  for (const [pair, [own, other]] of pairsOf(ids.length).entries()) {
    const found = (of: number, less: number) =>
      Object.fromEntries(
        measures.map((measure, k) => {
          const mean = means[of]![k]! - means[less]![k]!
          return [measure, meanOf(mean, sums.squares[pair * measures.length + k]!, matches)]
        }),
      ) as StatedReport['differences'][string][string]
    differences[ids[own]!]![ids[other]!] = found(own, other)
    differences[ids[other]!]![ids[own]!] = found(other, own)
  }
  return {
    replicates: matches,
    seed: request.seed,
    options: ids.map((id, k) => optionOf(id, { ground, sums: sums.options[k]!, seed: request.seed })),
    differences,
  }
}

/** In the order of `measures`. */
function meansOf(ground: Ground, { matches, wins, ties, sums }: Sums): number[] {
  const layout = layoutOf(ground)
  return [(wins + ties / 2) / matches, sums[layout.rankingPoints]! / matches, sums[layout.score]! / matches]
}

function meanOf(mean: number, squares: number, matches: number): Mean {
  const variance = matches > 1 ? Math.max(0, squares - matches * mean * mean) / (matches - 1) : 0
  return { mean, standardError: Math.sqrt(variance / matches) }
}

function optionOf(id: string, of: { ground: Ground; sums: Sums; seed: number }): StatedOption {
  const { ground, sums, seed } = of
  const report = matchReport(ground, sums, seed)
  const { wins, ties, matches } = sums
  const mean = (measured: Mean): Mean => ({ mean: measured.mean, standardError: measured.standardError })
  return {
    id,
    won: report.win,
    win: { mean: (wins + ties / 2) / matches, standardError: chanceError(wins + ties / 2, matches) },
    rankingPoints: mean(report.rankingPoints.ours),
    score: mean(report.score.ours),
    bonuses: Object.fromEntries(Object.entries(report.bonuses).map(([bonus, { ours }]) => [bonus, ours])),
  }
}

/** As in a match's report: two more of each kind, so that an error is never 0 (Agresti & Coull 1998). */
function chanceError(times: number, matches: number): number {
  const near = (times + 2) / (matches + 4)
  return Math.sqrt((near * (1 - near)) / (matches + 4))
}
