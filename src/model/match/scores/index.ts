/** Section 5 of the model, the score-level sibling: many seasons from few simulated matches. */
export { Calibrator, Calibrators } from './calibrate.ts'
export { season, seasonReport, seasonTotals } from './season.ts'
export type * from './types.ts'
