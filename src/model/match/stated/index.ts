/** Section 4 of the model, objective: options by wins and ranking points with a stated field. */
export { addStated, noSums, StatedPlayer } from './play.ts'
export { statedReport } from './report.ts'
export type * from './types.ts'
export { measures } from './types.ts'
