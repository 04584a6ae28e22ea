/** What a screen needs to write back, without what the comparison is computed with. */

export { shiftedBy, withShift } from './moved.ts'
export type { FieldLeg, FieldLegRef, FieldReport, StageShiftNeeded } from './types.ts'
