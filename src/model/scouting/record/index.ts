/** Forecasts that were kept before their matches, and how far they could be trusted. */

export { baselinesFor } from './baselines.ts'
export { type Calls, rangeOf, successes } from './calls.ts'
export { comingToday } from './coming.ts'
export { type BaselineName, baselineNames, type Compared, type Measure, measures } from './compared.ts'
export { type Counting, countingForecasts, type ForecastState } from './counting.ts'
export type { Coverage } from './coverage.ts'
export { centralInterval, histogramOf, meanOfHistogram } from './histogram.ts'
export { basisOf, forecastBody } from './made.ts'
export type { PitHistogram } from './pit.ts'
export { type CurvePoint, type ForecastRecord, type Judgement, type RecordRequest, recordOf } from './record.ts'
export * from './types.ts'
