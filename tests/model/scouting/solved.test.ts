import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { seededEvent } from '../../../seed/event/index.ts'
import { MixedModel, solvedByCategory, solveTotals, totalsOf } from '../../../src/model/scouting/solved/index.ts'
import { Chance } from './estimates/world.ts'
import { allNear, near } from './statistics/close.ts'

// Pinheiro & Bates, Mixed-Effects Models in S and S-PLUS (2000), section 1.1, the rails (data and printed values from memory:
// 24.805 and 4.0208 with REML; effects −34.53, −16.36, −12.39, 16.03, 18.01, 29.24). Balanced, so that the analysis of
// variance gives the same in closed form.
describe('travel times of six rails', () => {
  const rails = [
    [55, 53, 54],
    [26, 37, 32],
    [78, 91, 85],
    [92, 100, 96],
    [49, 51, 50],
    [80, 85, 83],
  ]
  const model = new MixedModel(
    rails.flatMap((own, k) => own.map(() => [k])),
    rails.flat(),
    6,
  )
  /** Golden section on ln ratio. */
  const best = (() => {
    let [low, high] = [Math.log(0.1), Math.log(1000)]
    for (let turn = 0; turn < 80; turn++) {
      const [a, b] = [high - 0.618034 * (high - low), low + 0.618034 * (high - low)]
      if (model.at(Math.exp(a)).logLikelihood > model.at(Math.exp(b)).logLikelihood) high = b
      else low = a
    }
    return Math.exp((low + high) / 2)
  })()

  it('have the published spreads where the restricted likelihood is highest', () => {
    const { variance, solution } = model.at(best)
    near(Math.sqrt(variance), 4.0208, 1e-4)
    near(Math.sqrt(best * variance), 24.805, 1e-4)
    near(solution[0]!, 66.5, 1e-9)
    allNear(solution.slice(1), [-12.39148, -34.53091, 18.00894, 29.24388, -16.35675, 16.02631], 2e-3)
  })

  it('have the likelihood and the predictions that the whole covariance matrix gives', () => {
    // V = I + ratio Z Z′, with its inverse and determinant.
    const profile = (ratio: number) => {
      const z = new Matrix(rails.flatMap((own, k) => own.map(() => rails.map((_, j) => Number(j === k)))))
      const v = Matrix.add(Matrix.eye(18), z.mmul(z.transpose()).mul(ratio))
      const w = inverse(v)
      const ones = Matrix.ones(18, 1)
      const y = Matrix.columnVector(rails.flat())
      const weight = ones.transpose().mmul(w).mmul(ones).get(0, 0)
      const level = ones.transpose().mmul(w).mmul(y).get(0, 0) / weight
      const off = Matrix.sub(y, Matrix.mul(ones, level))
      const squares = off.transpose().mmul(w).mmul(off).get(0, 0)
      // |V| of blocks of three equal correlations: (1 + 3 ratio) each.
      const determinant = 6 * Math.log(1 + 3 * ratio)
      const effects = z.transpose().mmul(w).mmul(off).mul(ratio).getColumn(0)
      return { log: -0.5 * (determinant + Math.log(weight) + 17 * Math.log(squares / 17)), effects }
    }
    const [one, other] = [profile(2), profile(50)]
    near(model.at(2).logLikelihood - model.at(50).logLikelihood, one.log - other.log, 1e-9)
    allNear(model.at(2).solution.slice(1), one.effects, 1e-9)
  })
})

describe('totals of three', () => {
  /** So many rounds in which every team plays once, each with contributions and noise. */
  function rounds(count: number, { seed, between, noise }: { seed: number; between: number; noise: number }) {
    const chance = new Chance(seed, 2)
    const truth = Array.from({ length: 24 }, () => 20 + between * chance.normal())
    const totals = Array.from({ length: count }, () => {
      const order = truth.map((_, k) => ({ k, at: chance.uniform() })).sort((a, b) => a.at - b.at)
      return Array.from({ length: 8 }, (_, a) => {
        const own = order.slice(3 * a, 3 * a + 3).map(({ k }) => k)
        const value = own.reduce((sum, k) => sum + truth[k]!, 0) + noise * chance.normal()
        return { teams: own.map((k) => `t${k}`), value }
      })
    }).flat()
    return { truth, totals, teams: truth.map((_, k) => `t${k}`) }
  }

  it('give contributions whose intervals hold the truth as often as they say', () => {
    const shares = { at80: [] as number[], at95: [] as number[] }
    for (let seed = 0; seed < 12; seed++) {
      const { truth, totals, teams } = rounds(5, { seed, between: 6, noise: 9 })
      const solved = solveTotals(totals, teams)!
      const holds = (which: 'interval80' | 'interval95') =>
        truth.filter((value, k) => {
          const [low, high] = solved.teams.get(`t${k}`)![which]
          return value >= low && value <= high
        }).length / truth.length
      shares.at80.push(holds('interval80'))
      shares.at95.push(holds('interval95'))
    }
    const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length
    // 12 events of 24 teams: three standard errors of a share of 288 are 7 and 4 points.
    expect(Math.abs(mean(shares.at80) - 0.8)).toBeLessThan(0.07)
    expect(Math.abs(mean(shares.at95) - 0.95)).toBeLessThan(0.04)
  })

  it('tell what is between teams from what is noise where many were played', () => {
    const { totals, teams, truth } = rounds(40, { seed: 3, between: 6, noise: 9 })
    const solved = solveTotals(totals, teams)!
    near(solved.noise, 9, 0.12)
    const off = Math.sqrt(truth.reduce((sum, x) => sum + (x - 20) ** 2, 0) / truth.length)
    near(solved.between, off, 0.3)
    expect(Math.abs(solved.teams.get('t0')!.mean - truth[0]!)).toBeLessThan(5)
  })

  it('say of a team without any what the event is, and nothing where there are hardly any', () => {
    const { totals, teams } = rounds(4, { seed: 5, between: 6, noise: 9 })
    const { mean, totals: own } = solveTotals(totals, [...teams, 'late'])!.teams.get('late')!
    expect(own).toBe(0)
    expect(Math.abs(mean - 20)).toBeLessThan(2)
    expect(solveTotals(totals.slice(0, 4), teams)).toBeNull()
  })
})

it('results of an event are solved by category, without points from fouls, voided plays and absent robots', () => {
  const { event, matches, results } = seededEvent()
  const teams = event.teams.map(({ team }) => team)
  const totals = totalsOf(matches, results, 'total')
  // 23 matches and a replay, one of which is voided.
  expect(totals).toHaveLength(46)
  expect(totals.filter((total) => total.teams.length === 2)).toHaveLength(1)
  const { red } = results[0]!
  expect(totals[0]!.value).toBe(red.points.total - red.points.fromFouls!)
  const solved = solvedByCategory(matches, results, teams)
  expect([...solved.keys()]).toEqual(['total', 'autonomous', 'goals', 'finishes'])
  expect(solved.get('goals')!.teams.size).toBe(teams.length)
})
