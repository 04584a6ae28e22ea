import { stratified } from '../../random/index.ts'
import { logNormal, picker, posteriorGrid } from '../estimates/grid.ts'
import { Named } from '../estimates/pool.ts'
import { drawCount } from '../estimates/settings.ts'
import { estimateOf } from '../estimates/summary.ts'
import type { Interval } from '../estimates/types.ts'
import { type AtRatio, MixedModel } from './mixed.ts'

/** What the three robots of an alliance came to. */
export interface Total {
  teams: readonly string[]
  value: number
}

export interface SolvedTeam {
  /** Expected contribution to a total. */
  mean: number
  interval80: Interval
  interval95: Interval
  /** Totals that it took part in. */
  totals: number
}

export interface Solved {
  teams: Map<string, SolvedTeam>
  /** Standard deviations between teams, and of what a total has beside its teams. */
  between: number
  noise: number
}

/** Robots of an alliance, among whom the event's mean is shared. */
const allianceSize = 3
/** ln of the variance between teams over that of a total's noise: wide, about robots that bring as much as chance does. */
const prior = { mean: Math.log(0.3), sd: 1.5 }

/**
 * Contributions of teams, solved from totals that three of them made together; nobody has to have watched. The ratio of the
 * variances is integrated over its restricted likelihood, so that few matches give wide intervals rather than bold ones.
 *
 * Null with fewer than five totals, which say nothing about single teams.
 *
 * @param teams those to be told about; one without a total is what the event is
 */
export function solveTotals(totals: readonly Total[], teams: readonly string[]): Solved | null {
  const all = [...new Set([...teams, ...totals.flatMap((total) => total.teams)])]
  if (totals.length < 5) return null
  const place = new Map(all.map((team, k) => [team, k]))
  const rows = totals.map((total) => total.teams.map((team) => place.get(team) as number))
  const values = totals.map(({ value }) => value)
  // About their mean, so that squares keep their digits.
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length
  const model = new MixedModel(
    rows,
    values.map((value) => value - centre),
    all.length,
  )
  const kept = new Map<number, AtRatio>()
  const at = (x: number) => {
    const known = kept.get(x) ?? model.at(Math.exp(x))
    kept.set(x, known)
    return known
  }
  const grid = posteriorGrid(
    [{ from: prior.mean - 4 * prior.sd, to: prior.mean + 3 * prior.sd, search: 7, points: 13 }],
    ([x]) => at(x as number).logLikelihood + logNormal(x as number, prior),
  )
  const pick = picker(grid)
  const cells = Array.from(stratified(drawCount, 9), (u) => at(grid.axes[0]![pick(u)] as number))
  const noise = new Named('solved noise')
  const free = totals.length - 1
  const scales = cells.map(({ variance }, d) => (variance * free) / 2 / noise.gamma(d, free / 2))
  const points = [...grid.weights.keys()].map((k) => ({ weight: grid.weights[k]!, ...at(grid.axes[0]![k]!) }))
  const found = teams.map((team): [string, SolvedTeam] => {
    const k = (place.get(team) as number) + 1
    const z = new Named(`${team} solved`)
    const mean = (cell: AtRatio) => cell.solution[k]! + (cell.solution[0]! + centre) / allianceSize
    const spread = ({ covariance }: AtRatio) =>
      covariance.get(k, k) + (2 * covariance.get(0, k)) / allianceSize + covariance.get(0, 0) / allianceSize ** 2
    const draws = Float64Array.from(cells, (cell, d) => mean(cell) + z.normal(d) * Math.sqrt(scales[d]! * spread(cell)))
    const { interval80, interval95 } = estimateOf(draws, { ownWeight: 1 })
    const expected = points.reduce((sum, point) => sum + point.weight * mean(point), 0)
    const own = totals.filter((total) => total.teams.includes(team)).length
    return [team, { mean: expected, interval80, interval95, totals: own }]
  })
  const deviation = (of: (cell: AtRatio, k: number) => number) =>
    Math.sqrt(points.reduce((sum, point, k) => sum + point.weight * of(point, k), 0))
  return {
    teams: new Map(found),
    between: deviation(({ variance }, k) => variance * Math.exp(grid.axes[0]![k]!)),
    noise: deviation(({ variance }) => variance),
  }
}
