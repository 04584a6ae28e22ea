/** Section 3 of the model: how long one trip takes, and which of its stages decide that. */
export { LegBuilder, type LegDrive, type LegSpec, type LegTimes, type StageShift } from './builder.ts'
export { criticalities, type Schedule, schedule } from './criticality.ts'
export { type Network, networkOf } from './network.ts'
export { legReport } from './report.ts'
export type * from './types.ts'
