import { test } from 'vitest'
import { described, leastSquares, ridge } from '../../../../src/model/scouting/statistics/index.ts'
import { allNear, near } from './close.ts'
import { lew, longley, lottery, norris } from './nist.ts'

// NIST StRD, Univariate Summary Statistics: certified values of Lew, Lottery and NumAcc1 to NumAcc4.
const alternating = (first: number, low: number, high: number) => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
]
test.each([
  ['Lew', lew, -177.435, 277.332168044316, -0.307304800605679, 1e-12],
  ['Lottery', lottery, 518.95871559633, 291.699727470969, -0.120948622967393, 1e-12],
  ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, -0.5, 1e-13],
  ['NumAcc2', alternating(1.2, 1.1, 1.3), 1.2, 0.1, -0.999, 1e-12],
  ['NumAcc3', alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, -0.999, 1e-9],
  ['NumAcc4', alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, -0.999, 1e-7],
] as const)('%s has its certified mean, spread and autocorrelation', (_, values, mean, sd, r, tolerance) => {
  const found = described([...values])
  near(found.mean, mean, 1e-13)
  near(found.sd, sd, tolerance)
  near(found.autocorrelation, r, Math.max(1e-11, tolerance))
})

// NIST StRD, Linear Regression: Norris.
test('a line has its certified coefficients', () => {
  const fit = leastSquares(
    norris.x.map((x) => [1, x]),
    norris.y,
  )
  near(fit.coefficients[0]!, -0.262323073774029, 1e-9)
  near(fit.coefficients[1]!, 1.00211681802045, 1e-9)
  near(fit.standardErrors[0]!, 0.232818234301152, 1e-9)
  near(fit.standardErrors[1]!, 0.000429796848199937, 1e-9)
  near(fit.sd, 0.884796396144373, 1e-9)
  near(fit.residualSquares, 26.6173985294224, 1e-9)
  near(fit.rSquared, 0.999993745883712, 1e-9)
})

// NIST StRD, Linear Regression: Longley. Ill-conditioned (about 1e10).
test('six predictors that nearly depend on each other have their certified coefficients', () => {
  const fit = leastSquares(
    longley.map(([, ...x]) => [1, ...x]),
    longley.map(([y]) => y!),
  )
  const certified = [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359, -0.0511041056535807,
    1829.15146461355,
  ]
  const errors = [
    890420.383607, 84.9149257748, 0.0334910077722, 0.488399681652, 0.214274163162, 0.226073200069, 455.478499142,
  ]
  for (const [j, b] of certified.entries()) near(fit.coefficients[j]!, b, 1e-7)
  for (const [j, error] of errors.entries()) near(fit.standardErrors[j]!, error, 1e-7)
  near(fit.sd, 304.854073561965, 1e-7)
  near(fit.rSquared, 0.995479004577296, 1e-7)
})

// R 4.2.2, lm with precision weights.
test('weighted least squares are those of another program', () => {
  const fit = leastSquares(
    [1, 2, 3, 4, 5, 6].map((x) => [1, x]),
    [2.1, 3.9, 6.2, 7.8, 10.3, 11.7],
    [1, 2, 1, 4, 2, 1],
  )
  const found = [...fit.coefficients, ...fit.standardErrors, fit.sd, fit.rSquared]
  const expected = [
    0.00322580645162, 1.98911290322581, 0.28593969896887, 0.07316715312957, 0.34741267178405, 0.99461693916242,
  ]
  for (const [k, value] of expected.entries()) near(found[k]!, value, 1e-9)
})

// Hoerl & Kennard (1970); numpy 2.4.6 by the normal equations, raw centred columns, constant free.
test('ridge regression penalises raw columns and not the constant', () => {
  const rows = [
    [1, 2],
    [2, 1],
    [3, 4],
    [4, 3],
    [5, 5.5],
  ]
  const solved = (penalty: number) => {
    const { coefficients, intercept } = ridge(rows, [3, 4, 8, 7, 11], { penalty, intercept: true })
    return [intercept, ...coefficients]
  }
  allNear(solved(0), [0.5, 1, 1], 1e-9)
  allNear(solved(1), [0.792834890966, 0.934579439252, 0.968847352025], 1e-9)
  allNear(solved(5), [1.72033898305, 0.768361581921, 0.830508474576], 1e-9)
})

// numpy 2.4.6, normal equations.
test('contributions of teams to totals, drawn to 0, are determined though the design is not', () => {
  const rows = ['111000', '000111', '100110', '011001', '101010', '010101'].map((row) => [...row].map(Number))
  const solved = (penalty: number) => ridge(rows, [60, 45, 55, 50, 58, 47], { penalty, intercept: false }).coefficients
  allNear(solved(1), [19.3, 16.1, 17.4, 14.1, 15.4, 12.2], 1e-9)
  // Towards no penalty: the shortest of all that fit.
  allNear(solved(1e-7), [22.5, 18.5, 19, 16, 16.5, 12.5], 1e-5)
})
