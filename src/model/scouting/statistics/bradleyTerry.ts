import { Matrix, solve } from 'ml-matrix'

/** Games of two, the first at home: so many won by either. */
export interface Meetings {
  home: string
  away: string
  homeWins: number
  awayWins: number
}

export interface Strengths {
  /** Log strength of each, that of the reference 0, and its standard error. */
  strengths: Map<string, { value: number; standardError: number }>
  /** What playing at home adds; null where it was not asked for. */
  home: { value: number; standardError: number } | null
  deviance: number
}

/**
 * Strengths of which the difference is the log odds to win, by maximum likelihood (Fisher scoring).
 *
 * Source: Bradley & Terry, Biometrika 39 (1952), 324–345.
 */
export function bradleyTerry(
  meetings: readonly Meetings[],
  { reference, home = false }: { reference: string; home?: boolean },
): Strengths {
  const names = [...new Set(meetings.flatMap((each) => [each.home, each.away]))].filter((name) => name !== reference)
  const size = names.length + Number(home)
  const rows = meetings.map((each) => {
    const row = new Array<number>(size).fill(0)
    if (names.includes(each.home)) row[names.indexOf(each.home)] = 1
    if (names.includes(each.away)) row[names.indexOf(each.away)] = -1
    if (home) row[size - 1] = 1
    return row
  })
  let b = new Array<number>(size).fill(0)
  let information = Matrix.zeros(size, size)
  for (let turn = 0; turn < 50; turn++) {
    information = Matrix.zeros(size, size)
    const slope = new Array<number>(size).fill(0)
    for (const [i, { homeWins, awayWins }] of meetings.entries()) {
      const row = rows[i] as number[]
      const p = chance(row, b)
      const n = homeWins + awayWins
      for (let j = 0; j < size; j++) {
        slope[j] = (slope[j] as number) + (row[j] as number) * (homeWins - n * p)
        for (let k = 0; k < size; k++)
          information.set(j, k, information.get(j, k) + n * p * (1 - p) * (row[j] as number) * (row[k] as number))
      }
    }
    const step = solve(information, Matrix.columnVector(slope)).getColumn(0)
    b = b.map((value, j) => value + (step[j] as number))
    if (Math.max(...step.map(Math.abs)) < 1e-12) break
  }
  const covariance = solve(information, Matrix.eye(size))
  const errorOf = (j: number) => Math.sqrt(covariance.get(j, j))
  const strengths = new Map(names.map((name, j) => [name, { value: b[j] as number, standardError: errorOf(j) }]))
  strengths.set(reference, { value: 0, standardError: 0 })
  const log = (share: number, p: number, n: number) => (share > 0 ? n * share * Math.log(share / p) : 0)
  const deviance = meetings.reduce((sum, { homeWins, awayWins }, i) => {
    const n = homeWins + awayWins
    const p = chance(rows[i] as number[], b)
    return sum + 2 * (log(homeWins / n, p, n) + log(awayWins / n, 1 - p, n))
  }, 0)
  return { strengths, home: home ? { value: b[size - 1] as number, standardError: errorOf(size - 1) } : null, deviance }
}

const chance = (row: readonly number[], b: readonly number[]) =>
  1 / (1 + Math.exp(-row.reduce((sum, x, j) => sum + x * (b[j] as number), 0)))
