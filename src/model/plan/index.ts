/** Section 4 of the model: one robot, one match, exactly. */
export { formNodes } from './form.ts'
export { loadsFor } from './loads.ts'
export { type FormRun, Planner, plan, type Solved } from './planner.ts'
export type { LegNames } from './pruned.ts'
// The trips that a plan expects. A plan whose legs become slower, slowedFrom.ts, is imported from its own file: what stands
// here is loaded with the first page’s worker.
export { type ExpectedTrips, expectedTrips } from './trips.ts'
export type * from './types.ts'
