/** Section 7 of the model: timings from hardware. */

export type * from './answers.ts'
export type * from './inputs.ts'
export type * from './parts.ts'
export type * from './types.ts'
