import { describe, expect, it } from 'vitest'
import { stratified } from '../../../../src/model/random/index.ts'
import { Chances } from '../../../../src/model/scouting/estimates/chances.ts'
import { Named } from '../../../../src/model/scouting/estimates/pool.ts'
import { Rates } from '../../../../src/model/scouting/estimates/rates.ts'
import { hyperpriors } from '../../../../src/model/scouting/estimates/settings.ts'
import { Shares } from '../../../../src/model/scouting/estimates/shares.ts'
import type { TripMatch } from '../../../../src/model/scouting/estimates/tripData.ts'
import { Trips } from '../../../../src/model/scouting/estimates/trips.ts'
import { betaQuantile, gammaQuantile, normalQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../../browser/longForm.ts'
import { insideBand } from './ranks.ts'
import { Chance } from './world.ts'

/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari & Gelman 2018): events whose hyperparameters are drawn from
 * the hyperpriors, 12 teams of 4 matches; where the truth ranks among the draws of its own posterior is evenly spread if the
 * posterior is right.
 */
const events = 500
const teams = 12
const matches = 4
const drawCount = 1023

const ranks = new Map<string, number[]>()
function note(name: string, truth: number, draws: readonly number[], chance: Chance): void {
  const below = draws.filter((draw) => draw < truth).length
  // The place within its own rank is chance, so that shares are even on (0, 1).
  ranks.set(name, [...(ranks.get(name) ?? []), (below + chance.uniform()) / (draws.length + 1)])
}

const verdict = (names: readonly string[]) => {
  const found = insideBand(new Map(names.map((name) => [name, ranks.get(name)!])), { level: 0.99, simulations: 20_000 })
  for (const [name, inside] of found) expect(inside, name).toBeGreaterThanOrEqual(1)
}

const poisson = (mean: number, chance: Chance): number => {
  let [time, count] = [-Math.log(chance.uniform()), 0]
  while (time < mean) {
    count++
    time -= Math.log(chance.uniform())
  }
  return count
}

describe.runIf(inLongForm)('the posterior is that of its own model', () => {
  it('for rates', () => {
    const { shape, mean } = hyperpriors.attempts
    for (let e = 0; e < events; e++) {
      const chance = new Chance(61, e)
      const a = shape.median * Math.exp(shape.spread * chance.normal())
      const m = mean.median * Math.exp(mean.spread * chance.normal())
      const truth = Array.from({ length: teams }, () => gammaQuantile(chance.uniform(), a, a / m))
      const data = truth.map((rate) => ({ count: poisson(rate * matches, chance), exposure: matches }))
      const rates = new Rates(data)
      const gamma = new Named(`calibration ${e}`)
      const priors = Array.from(stratified(drawCount, e), (u) => rates.prior(u))
      const own = priors.map((prior, d) => gamma.gamma(d, prior.shape + data[0]!.count) / (prior.rate + matches))
      note(
        'shape',
        a,
        priors.map((prior) => prior.shape),
        chance,
      )
      note(
        'mean rate',
        m,
        priors.map((prior) => prior.shape / prior.rate),
        chance,
      )
      note('rate', truth[0]!, own, chance)
    }
    verdict(['shape', 'mean rate', 'rate'])
  })

  it('for chances', () => {
    const { logOdds, strength } = hyperpriors.success
    for (let e = 0; e < events; e++) {
      const chance = new Chance(62, e)
      const s = strength.median * Math.exp(strength.spread * chance.normal())
      const odds = logOdds.mean + logOdds.sd * chance.normal()
      const a = s / (1 + Math.exp(-odds))
      const truth = Array.from({ length: teams }, () => betaQuantile(chance.uniform(), a, s - a))
      const data = truth.map((p) => {
        const hits = Array.from({ length: 20 }, () => chance.uniform()).filter((u) => u < p).length
        return { hits, misses: 20 - hits }
      })
      const chances = new Chances(data, hyperpriors.success)
      const [one, other] = [new Named(`calibration a ${e}`), new Named(`calibration b ${e}`)]
      const priors = Array.from(stratified(drawCount, e), (u) => chances.prior(u))
      const own = priors.map((prior, d) => {
        const hit = one.gamma(d, prior.a + data[0]!.hits)
        return hit / (hit + other.gamma(d, prior.b + data[0]!.misses))
      })
      note(
        'strength',
        s,
        priors.map((prior) => prior.a + prior.b),
        chance,
      )
      note(
        'level',
        a / s,
        priors.map((prior) => prior.a / (prior.a + prior.b)),
        chance,
      )
      note('chance', truth[0]!, own, chance)
    }
    verdict(['strength', 'level', 'chance'])
  })

  it('for shares', () => {
    const { strength, base } = hyperpriors.goals
    const categories = 3
    for (let e = 0; e < events; e++) {
      const chance = new Chance(65, e)
      const dirichletOf = (alpha: readonly number[]) => {
        const all = alpha.map((a) => Math.max(1e-300, gammaQuantile(chance.uniform(), a, 1)))
        const sum = all.reduce((total, x) => total + x, 0)
        return all.map((x) => x / sum)
      }
      const s = strength.median * Math.exp(strength.spread * chance.normal())
      const shares = dirichletOf(new Array(categories).fill(base))
      const truth = Array.from({ length: teams }, () => dirichletOf(shares.map((share) => Math.max(1e-4, s * share))))
      const data = truth.map((own) => {
        const counts = new Float64Array(categories)
        for (let k = 0; k < 30; k++) {
          const u = chance.uniform()
          counts[u < own[0]! ? 0 : u < own[0]! + own[1]! ? 1 : 2]!++
        }
        return counts
      })
      const model = new Shares(categories, data, hyperpriors.goals)
      const named = (what: string) => Array.from({ length: categories }, (_, c) => new Named(`${what} ${e} ${c}`))
      const [event, team] = [named('calibration event'), named('calibration team')]
      const priors = Array.from(stratified(drawCount, e), (u, d) => model.prior(u, event, d))
      const sum = (alpha: Float64Array) => alpha.reduce((total, a) => total + a, 0)
      const own = priors.map((alpha, d) => {
        const drawn = Array.from(alpha, (a, c) => team[c]!.gamma(d, a + data[0]![c]!))
        return drawn[0]! / (drawn[0]! + drawn[1]! + drawn[2]!)
      })
      note('share strength', s, priors.map(sum), chance)
      note(
        'event share',
        shares[0]!,
        priors.map((alpha) => alpha[0]! / sum(alpha)),
        chance,
      )
      note('share', truth[0]![0]!, own, chance)
    }
    verdict(['share strength', 'event share', 'share'])
  })

  it('for times of trips, cut off at the end of every match', () => {
    const { within, form, between, level } = hyperpriors.trip
    for (let e = 0; e < events; e++) {
      const chance = new Chance(63, e)
      const truth = {
        within: within.median * Math.exp(within.spread * chance.normal()),
        form: form.scale * Math.abs(chance.normal()),
        between: between.median * Math.exp(between.spread * chance.normal()),
        level: Math.log(level.median) + level.spread * chance.normal(),
      }
      const medians = Array.from({ length: teams }, () => truth.level + truth.between * chance.normal())
      const data = medians.map((median) =>
        Array.from({ length: matches }, () => matchOf(median + truth.form * chance.normal(), truth.within, chance)),
      )
      const trips = new Trips(data)
      const [level_, team] = [new Named(`calibration level ${e}`), new Named(`calibration trip ${e}`)]
      const priors = Array.from(stratified(drawCount, e), (u, d) => trips.prior(u, level_.normal(d)))
      const own = priors.map((prior, d) => {
        const factor = trips.own(data[0]!, prior)
        const before = 1 / prior.between ** 2
        const precision = before + factor.precision
        return (
          (before * prior.level + factor.precision * factor.mean) / precision + team.normal(d) / Math.sqrt(precision)
        )
      })
      for (const name of ['within', 'form', 'between', 'level'] as const)
        note(
          `trip ${name}`,
          truth[name],
          priors.map((prior) => prior[name]),
          chance,
        )
      note('trip median', medians[0]!, own, chance)
    }
    verdict(['within', 'form', 'between', 'level', 'median'].map((name) => `trip ${name}`))
  })

  it('and the check would tell a posterior that is a fifth too narrow', () => {
    const chance = new Chance(64, 1)
    const z = () => normalQuantile(chance.uniform())
    for (let e = 0; e < events; e++)
      note(
        'too narrow',
        z(),
        Array.from({ length: drawCount }, () => 0.8 * z()),
        chance,
      )
    const found = insideBand(new Map([['too narrow', ranks.get('too narrow')!]]), { level: 0.99, simulations: 2000 })
    expect(found.get('too narrow')).toBeLessThan(1)
  })
})

/** Trips one after the other through 120 s, of which the last is cut off. */
function matchOf(mean: number, within: number, chance: Chance): TripMatch {
  const logs: number[] = []
  let left = 120
  for (;;) {
    const log = mean + within * chance.normal()
    if (Math.exp(log) > left) break
    logs.push(log)
    left -= Math.exp(log)
  }
  const average = logs.length > 0 ? logs.reduce((sum, x) => sum + x, 0) / logs.length : 0
  return {
    weight: 1,
    count: logs.length,
    mean: average,
    squares: logs.reduce((sum, x) => sum + (x - average) ** 2, 0),
    cut: [{ at: Math.log(left), weight: 1 }],
  }
}
