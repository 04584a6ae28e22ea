/** Records made into numbers: trips, seconds, pieces, per robot and match. */

export { averaged } from './average.ts'
export { type Choice, type EventRecords, seenByTeam, type TeamMatch } from './byTeam.ts'
export { attemptsOf } from './counted.ts'
export { seenIn, watchOf } from './record.ts'
export { tripGap, type View, type ViewedTrip, viewsOf } from './trips.ts'
export type * from './types.ts'
