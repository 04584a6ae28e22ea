/** Section 7 of the model: timings from hardware. */

// Stored air through the trips that a plan expects
export { type AirFault, airFaults } from './air/airFaults.ts'
export { airOfRobot, sameUse, usesByStages } from './air/airOfRobot.ts'
export { type AirBudget, type AirPlan, type AirTrips, airPlan } from './air/airPlan.ts'
export { keptAir } from './air/keptAir.ts'
export { type AirOfRobot, type AirOverPlan, airOverPlan } from './air/overPlan.ts'
export { atPressure, type SlowedStage, slowedByAir } from './air/slowed.ts'
export { strokesOf } from './air/strokesOf.ts'
export type * from './answers.ts'
// A time from motors, wheels, cylinders or air
export { timing } from './calculate.ts'
// Stages and drives that follow a mechanism of their robot
export { followHardware, type MechanismAnswer, mechanismAnswer, mechanismDrive, mechanismDuration } from './follow.ts'
// What the bounds of single fields can not say
export { type InputFault, inputFaults } from './inputFaults.ts'
export type * from './inputs.ts'
export type * from './parts.ts'
// What another gearing does to the match, planned at a few places and filled in between
export { type Filled, filled, mostOff, type Planned, placesToPlan } from './search/fill.ts'
export { type Gearing, gearingOf, reductionBounds, searchedOf, withGearing } from './search/gearing.ts'
export { type Followers, followersOf, type PointsAt, pointsAt } from './search/points.ts'
// The reduction and number of motors that are quickest
export { type Searched, type Sweep, type SweepPoint, type SweepResult, sweep } from './search/sweep.ts'
export { type MatchPoints, type SweepAnswer, type SweptMatch, sweepMatch } from './search/sweepPoints.ts'
export type * from './types.ts'
