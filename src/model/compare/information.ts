import { inputBelief } from './inputBelief.ts'
import { addMoments, type Curve, Smoother } from './smoother.ts'
import type { Estimate, Input } from './types.ts'

/** Expected points of every option (inner list) in every draw. */
export type Draws = readonly (readonly number[])[]

const groups = 10
/** Numbers of measurements for which the value of measuring is shown. */
export const measurements = [1, 2, 4, 8, 12, 16, 32, 64] as const

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** Standard error of the mean of independent values. */
function errorOfMean(values: readonly number[]): number {
  const center = mean(values)
  const squares = values.reduce((sum, value) => sum + (value - center) ** 2, 0)
  return values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1) / values.length)
}

/** Each option's mean over the draws. */
export const meansOf = (draws: Draws): number[] =>
  (draws[0] ?? []).map((_, option) => mean(draws.map((values) => values[option] as number)))

/** How often each option is best; equally good ones share the draw. */
export function chanceOfBest(draws: Draws): number[] {
  const chance = (draws[0] ?? []).map(() => 0)
  for (const values of draws) {
    const most = Math.max(...values)
    const best = values.flatMap((value, option) => (most - value <= 1e-9 ? [option] : []))
    for (const option of best) chance[option] = (chance[option] as number) + 1 / best.length / draws.length
  }
  return chance
}

/** What each option is expected to lose against the best of each draw (points). */
export const expectedRegret = (draws: Draws): number[] =>
  (draws[0] ?? []).map((_, option) => mean(draws.map((values) => Math.max(...values) - (values[option] as number))))

/**
 * Expected value of perfect information: mean of the best in each draw − best of the means (points). The standard error
 * is that of the mean over `parts` equal, independent parts of the draws (the hypercubes).
 */
export function perfectInformation(draws: Draws, parts: number): Estimate {
  const means = meansOf(draws)
  const best = means.indexOf(Math.max(...means))
  const lost = draws.map((values) => Math.max(...values) - (values[best] as number))
  const size = draws.length / parts
  const byPart = Array.from({ length: parts }, (_, part) => mean(lost.slice(part * size, (part + 1) * size)))
  return { value: mean(lost), standardError: errorOfMean(byPart) }
}

/** Mean of the best curve − best of the curves' means; the reference option is the curve 0. */
function gain(curves: readonly Curve[], values: readonly number[]): number {
  let best = 0
  const sums = curves.map(() => 0)
  for (const value of values) {
    let most = 0
    curves.forEach((curve, i) => {
      const points = curve.at(value)
      sums[i] = (sums[i] as number) + points
      most = Math.max(most, points)
    })
    best += most
  }
  return Math.max(0, (best - Math.max(0, ...sums)) / values.length)
}

export interface Learning {
  /** Value of knowing the input exactly (points); below its error it is 0. */
  evppi: Estimate
  /** [measurements, points], rising to at most the value of knowing exactly; null without `perMeasurement`. */
  evsi: [number, number][] | null
}

/**
 * What it is worth to know one input exactly, or to measure it n times, from draws in which all inputs vary: a penalised
 * spline of each option's difference to the best-on-average one on the input; EVPPI = mean of the best curve − best of
 * the means. Its standard error comes from leaving out each of 10 groups in turn (jackknife, curves fitted anew). It is
 * 0 where it is below that error, or where no curve describes the draws better than a constant (Schwarz's criterion).
 *
 * EVSI: the draws are shrunk to m + √(n / (n + n₀)) (θ − m), n₀ = perMeasurement² / var θ, and read off the same curves;
 * held rising in n and at most the EVPPI, which it is by theory and may miss by the noise of the curve.
 *
 * Sources: Strong, Oakley & Brennan, Medical Decision Making 34 (2014); Jalal & Alarid-Escudero, Medical Decision Making
 * 38 (2018); jackknife: Efron & Tibshirani, An Introduction to the Bootstrap (1993), chapter 11.
 */
export function learning(input: Input, values: readonly number[], draws: Draws): Learning {
  const nothing: Learning = {
    evppi: { value: 0, standardError: 0 },
    evsi: input.perMeasurement === undefined ? null : measurements.map((count) => [count, 0]),
  }
  const belief = inputBelief(input)
  const means = meansOf(draws)
  const reference = means.indexOf(Math.max(...means))
  if (!(belief.variance > 0) || means.length < 2) return nothing

  const differences = means.flatMap((_, option) =>
    option === reference ? [] : [draws.map((points) => (points[option] as number) - (points[reference] as number))],
  )
  const smoother = new Smoother(values)
  const inGroup = (group: number) => (_: unknown, draw: number) => draw % groups === group
  const parts = Array.from({ length: groups }, (_, group) =>
    smoother.moments(
      values.filter(inGroup(group)),
      differences.map((difference) => difference.filter(inGroup(group))),
    ),
  )
  const curves = smoother.fit(addMoments(parts))
  const leftOut = parts.map((_, group) =>
    gain(
      smoother.fit(addMoments(parts.filter((_, other) => other !== group))),
      values.filter((_, draw) => draw % groups !== group),
    ),
  )
  const value = gain(curves, values)
  const standardError = (groups - 1) * errorOfMean(leftOut)
  if (curves.every((curve) => curve.flat) || value < standardError) {
    return { ...nothing, evppi: { value: 0, standardError } }
  }
  return { evppi: { value, standardError }, evsi: sampleInformation({ input, values, curves, most: value }) }
}

function sampleInformation(of: { input: Input; values: readonly number[]; curves: readonly Curve[]; most: number }) {
  const { input, values, curves, most } = of
  if (input.perMeasurement === undefined) return null
  const belief = inputBelief(input)
  const prior = input.perMeasurement ** 2 / belief.variance
  let reached = 0
  return measurements.map((count): [number, number] => {
    const shrink = Math.sqrt(count / (count + prior))
    const shrunk = values.map((value) => belief.mean + shrink * (value - belief.mean))
    reached = Math.min(most, Math.max(reached, gain(curves, shrunk)))
    return [count, reached]
  })
}
