import gammaln from '@stdlib/math-base-special-gammaln'
import { describe, expect, test } from 'vitest'
import {
  betaCdf,
  betaQuantile,
  clopperPearson,
  dirichletMoments,
  gammaCdf,
  gammaPoisson,
  gammaQuantile,
  logChoose,
  logDirichletMultinomial,
  logGamma,
  logGammaPoisson,
  negativeBinomialCdf,
  negativeBinomialPmf,
  normalCdf,
  normalInverseGamma,
  poissonLimits,
  studentQuantile,
  upperTail,
  wilson,
} from '../../../../src/model/scouting/statistics/index.ts'
import { allNear, near } from './close.ts'

test('ln Γ is that of an independent program and of closed forms', () => {
  for (const x of [1e-6, 0.03, 0.5, 1, 1.4616, 2, 3.7, 8.99, 9, 24.2, 171, 5e4]) {
    const expected = gammaln(x)
    expect(Math.abs(logGamma(x) - expected)).toBeLessThan(2e-13 * Math.max(1, Math.abs(expected)))
  }
  near(logGamma(0.5), 0.5 * Math.log(Math.PI), 1e-13)
})

test('the share above is right near and far, with its slope', () => {
  near(upperTail(1).log, Math.log(1 - normalCdf(1)), 1e-12)
  // Abramowitz & Stegun (1964), table 26.2: Q(5) = 2.86651 57187 9e-7 (from memory).
  near(Math.exp(upperTail(5).log), 2.866515719e-7, 1e-8)
  // Both ways of computing meet.
  near(upperTail(25).log, upperTail(24.999999).log, 1e-6)
  near(upperTail(24.9999999).hazard, upperTail(25).hazard, 1e-6)
})

// Gelman et al., Bayesian Data Analysis (3rd ed. 2013), 2.6; numbers by scipy 1.17.1.
describe('a rate believed from counts', () => {
  test('is the Gamma of the textbook', () => {
    const { shape, rate } = gammaPoisson({ shape: 3, rate: 5 }, 3, 2)
    expect([shape, rate]).toEqual([6, 7])
    allNear(
      [shape / rate, Math.sqrt(shape) / rate, gammaQuantile(0.025, shape, rate), gammaQuantile(0.975, shape, rate)],
      [0.8571428571, 0.3499271061, 0.3145563219, 1.666904583],
      1e-9,
    )
    near(1 - gammaCdf(1, 33, 25), 0.9285439688, 1e-9)
    near(1 - gammaCdf(1, 6, 7), 0.3007082762, 1e-9)
  })

  test('forecasts a negative binomial count', () => {
    const chances = [0, 1, 2, 3].map((k) => negativeBinomialPmf(k, 6, 0.875))
    allNear(chances, [0.4487953186, 0.336596489, 0.1472609639, 0.04908698797], 1e-9)
    // The same from the marginal chances: of k more in the next match.
    const prior = { shape: 6, rate: 7 }
    const marginal = [0, 1, 2, 3].map((k) => Math.exp(logGammaPoisson(prior, k, 1) - logGamma(k + 1)))
    allNear(marginal, chances, 1e-12)
  })
})

// Johnson, Kemp & Kotz, Univariate Discrete Distributions (3rd ed. 2005), chapter 5; numbers by scipy 1.17.1.
test('negative binomial chances', () => {
  const chances = [0, 1, 2, 5, 10].map((k) => negativeBinomialPmf(k, 3, 0.4))
  allNear(chances, [0.064, 0.1152, 0.13824, 0.10450944, 0.02554091274], 1e-10)
  near(negativeBinomialCdf(5, 3, 0.4), 0.68460544, 1e-9)
  const all = Array.from({ length: 400 }, (_, k) => negativeBinomialPmf(k, 3, 0.4))
  const mean = all.reduce((sum, p, k) => sum + k * p, 0)
  near(mean, 4.5, 1e-10)
  near(
    all.reduce((sum, p, k) => sum + (k - mean) ** 2 * p, 0),
    11.25,
    1e-10,
  )
})

// Gelman et al. (2013), 2.4: 437 girls of 980 births.
test('a share believed from hits', () => {
  const [a, b] = [438, 544]
  const mean = a / (a + b)
  allNear(
    [mean, Math.sqrt((mean * (1 - mean)) / (a + b + 1)), betaQuantile(0.5, a, b)],
    [0.4460285132, 0.01585434332, 0.4459918579],
    1e-9,
  )
  allNear([betaQuantile(0.025, a, b), betaQuantile(0.975, a, b)], [0.4150654925, 0.4771997706], 1e-9)
  near((438 * 439 * 440) / (982 * 983 * 984), 0.0890699489, 1e-9)
  near(betaCdf(betaQuantile(0.2, a, b), a, b), 0.2, 1e-10)
})

// Gelman et al. (2013), 3.4: the debates of 1988.
test('shares believed from counts', () => {
  const counts = [727, 583, 137]
  const moments = dirichletMoments(counts.map((n) => n + 1))
  allNear(
    moments.map(({ mean }) => mean),
    [0.5020689655, 0.4027586207, 0.0951724138],
    1e-9,
  )
  allNear(
    moments.map(({ sd }) => sd),
    [0.0131260054, 0.0128754869, 0.0077037956],
    1e-9,
  )
  const orders = logChoose(1447, 727) + logChoose(720, 583)
  near(logDirichletMultinomial([1, 1, 1], counts) + orders, -13.86342033, 1e-9)
})

// Gelman et al. (2013), 3.3; closed form.
test('mean and variance believed from numbers', () => {
  const posterior = normalInverseGamma({ mean: 10, weight: 2, shape: 3, scale: 4 }, [9.8, 10.4, 11.1, 8.9, 10.6])
  near(posterior.mean, 10.11428571, 1e-9)
  expect([posterior.weight, posterior.shape]).toEqual([7, 5.5])
  near(posterior.scale, 5.444285714, 1e-9)
  near(posterior.scale / (posterior.shape - 1), 1.20984127, 1e-8)
  const scale = Math.sqrt(posterior.scale / posterior.shape / posterior.weight)
  near(scale, 0.3760452347, 1e-9)
  const half = studentQuantile(0.975, 11) * scale
  allNear([posterior.mean - half, posterior.mean + half], [9.286615733, 10.9419557], 1e-7)
  near(Math.sqrt((posterior.scale / posterior.shape) * (1 + 1 / posterior.weight)), 1.063616542, 1e-9)
})

// Garwood, Biometrika 28 (1936), 437–442; numbers by scipy 1.17.1.
test.each([
  [0, 0, 3.688879454],
  [1, 0.02531780798, 5.571643391],
  [2, 0.2422092785, 7.224687668],
  [5, 1.62348639, 11.66833208],
  [10, 4.795388696, 18.39035604],
  [20, 12.21651959, 30.8883779],
  [100, 81.36399125, 121.6267938],
])('limits of a Poisson mean after %i', (count, low, high) => {
  allNear([...poissonLimits(count)], [low, high], 1e-7)
})

// Wilson (1927); Newcombe, Statistics in Medicine 17 (1998), 857–872, Table I; numbers by scipy 1.17.1.
test.each([
  [81, 263, [0.25528852, 0.36620958], [0.25273675, 0.36762192]],
  [15, 148, [0.0623864, 0.16048724], [0.05784401, 0.16165049]],
  [0, 20, [0, 0.16112516], [0, 0.16843347]],
  [1, 29, [0.0061132143, 0.17175522], [0.00087264688, 0.1776443]],
  [10, 10, [0.7224672, 1], [0.69150289, 1]],
])('limits of a share of %i in %i', (hits, of, score, exact) => {
  allNear([...wilson(hits, of)], score, 1e-7)
  allNear([...clopperPearson(hits, of)], exact, 1e-7)
})
