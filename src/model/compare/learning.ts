import { hypercubes } from './hypercubes.ts'
import { type Draws, errorOfMean, mean, meansOf, perfectInformation } from './information.ts'
import { inputBelief } from './inputBelief.ts'
import { addMoments, type Curve, Smoother } from './smoother.ts'
import type { Estimate, Input } from './types.ts'

const groups = 10
const sweeps = 2
/** Numbers of measurements for which the value of measuring is shown. */
export const measurements = [1, 2, 4, 8, 12, 16, 32, 64] as const

export interface Learning {
  /** Value of knowing the input exactly (points); below its error it is 0. */
  evppi: Estimate
  /** [measurements, points], rising to at most the value of knowing exactly; null without `perMeasurement`. */
  evsi: [number, number][] | null
}

/** One input's values, and the options' differences in the same draws with the other inputs' effects taken off. */
interface View {
  input: Input
  values: readonly number[]
  smoother: Smoother
  differences: readonly (readonly number[])[]
}

/**
 * What it is worth to know each input exactly, or to measure it n times, from draws in which all inputs vary: a
 * penalised spline, on the input, of each option's difference to the best-on-average one; EVPPI = mean of the best curve
 * − best of the means. What curves of the other inputs explain is first taken off the difference (backfitting): the
 * inputs are independent, so that the curve sought stays the same, and most of its noise goes.
 *
 * The standard error is that of the curves, by leaving out each of 10 groups in turn and fitting anew (jackknife), and
 * that of the input's own draws, from the hypercubes. EVPPI is 0 where it is below that error, or where no curve describes the draws better than a constant (Schwarz's criterion).
 *
 * EVSI: the draws are shrunk to m + √(n / (n + n₀)) (θ − m), n₀ = perMeasurement² / var θ, and read off the same curves;
 * held rising in n and at most the EVPPI, which it is by theory and may miss by the noise of the curve.
 *
 * Sources: Strong, Oakley & Brennan, Medical Decision Making 34 (2014); Jalal & Alarid-Escudero, Medical Decision Making
 * 38 (2018); backfitting: Hastie & Tibshirani, Generalized Additive Models (1990), chapter 4; jackknife: Efron &
 * Tibshirani, An Introduction to the Bootstrap (1993), chapter 11.
 */
export function learning(inputs: readonly Input[], rows: readonly (readonly number[])[], draws: Draws): Learning[] {
  const means = meansOf(draws)
  const reference = means.indexOf(Math.max(...means))
  const differences = means.flatMap((_, option) =>
    option === reference ? [] : [draws.map((points) => (points[option] as number) - (points[reference] as number))],
  )
  const varying = inputs.flatMap((input, index) => (inputBelief(input).variance > 0 ? [index] : []))
  const views = additiveViews(
    varying.map((index) => ({ input: inputs[index] as Input, values: rows.map((row) => row[index] as number) })),
    differences,
  )
  return inputs.map((input, index) => {
    const view = views[varying.indexOf(index)]
    return view && differences.length > 0 ? learningOf(view) : nothing(input, 0)
  })
}

const nothing = (input: Input, standardError: number): Learning => ({
  evppi: { value: 0, standardError },
  evsi: input.perMeasurement === undefined ? null : measurements.map((count) => [count, 0]),
})

/** Backfitting: every input's curve is fitted to what the others' leave, in turn. */
function additiveViews(
  columns: readonly { input: Input; values: readonly number[] }[],
  differences: readonly (readonly number[])[],
): View[] {
  const smoothers = columns.map(({ values }) => new Smoother(values))
  const left = differences.map((difference) => Float64Array.from(difference))
  const effects = columns.map(() => differences.map((difference) => new Float64Array(difference.length)))
  const without = (column: number) =>
    left.map((rest, d) => Array.from(rest, (value, draw) => value + (effects[column]?.[d]?.[draw] as number)))
  for (let sweep = 0; sweep < sweeps && columns.length > 1; sweep++) {
    columns.forEach(({ values }, column) => {
      const responses = without(column)
      const smoother = smoothers[column] as Smoother
      smoother.fit(smoother.moments(values, responses)).forEach((curve, d) => {
        const effect = values.map((value) => (curve.flat ? 0 : curve.at(value)))
        const center = mean(effect)
        effects[column]![d] = Float64Array.from(effect, (value) => value - center)
        left[d] = Float64Array.from(
          responses[d] as number[],
          (value, draw) => value - ((effect[draw] as number) - center),
        )
      })
    })
  }
  return columns.map(({ input, values }, column) => ({
    input,
    values,
    smoother: smoothers[column] as Smoother,
    differences: without(column),
  }))
}

function learningOf({ input, values, smoother, differences }: View): Learning {
  const inGroup = (group: number) => (_: unknown, draw: number) => draw % groups === group
  const parts = Array.from({ length: groups }, (_, group) =>
    smoother.moments(
      values.filter(inGroup(group)),
      differences.map((difference) => difference.filter(inGroup(group))),
    ),
  )
  const curves = smoother.fit(addMoments(parts))
  const leftOut = parts.map((_, group) =>
    gain(smoother.fit(addMoments(parts.filter((_, other) => other !== group))), values),
  )
  const value = gain(curves, values)
  const standardError = Math.hypot((groups - 1) * errorOfMean(leftOut), errorOfDraws(curves, values))
  if (curves.every((curve) => curve.flat) || value < standardError) return nothing(input, standardError)
  return { evppi: { value, standardError }, evsi: sampleInformation({ input, values, curves, most: value }) }
}

/** Standard error that the draws of the input itself give to the gain, from the hypercubes. */
function errorOfDraws(curves: readonly Curve[], values: readonly number[]): number {
  const points = values.map((value) => [0, ...curves.map((curve) => curve.at(value))])
  return perfectInformation(points, hypercubes).standardError
}

/** Mean of the best curve − best of the curves' means; the reference option's curve is 0. */
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
