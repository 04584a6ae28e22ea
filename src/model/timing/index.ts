/** Section 7 of the model: timings from hardware. */

export type * from './answers.ts'
// A time from motors, wheels, cylinders or air
export { timing } from './calculate.ts'
export type * from './inputs.ts'
export type * from './parts.ts'
export type * from './types.ts'
