/** Model against field: trips that were seen, beside what a design says of them; and back into a copy of the design. */

export { shiftedBy, withShift } from './moved.ts'
export { type FieldRequest, fieldReport } from './report.ts'
export { type Run, runsOf } from './runs.ts'
export * from './types.ts'
