/** Section 4 of the model: one robot, one match, exactly. */
export { formNodes } from './form.ts'
export { loadsFor } from './loads.ts'
export { type FormRun, Planner, plan, type Solved } from './planner.ts'
export type { LegNames } from './pruned.ts'
// A plan whose legs become slower, and the trips that a plan expects
export { slowedFrom, slowing } from './slowedFrom.ts'
export { type ExpectedTrips, expectedTrips } from './trips.ts'
export type * from './types.ts'
