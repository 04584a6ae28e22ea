/** An event: its schedule, what officials counted, the ranking, and who watches whom. */

// Alliances of the playoffs
export { playoffAlliances } from './alliances.ts'
export * from './assign/index.ts'
// Who watches whom
export { checkAssignments } from './assigned.ts'
// A schedule as it is, and what an edit changes
export * from './changes.ts'
export { checkSchedule, type Finding } from './check.ts'
export { type NextMatch, nextMatchOf } from './next.ts'
export { idOf, inOrder, type MatchName, matchKey, matchTitle, voided } from './order.ts'
// The ranking
export { type Earned, earnedIn } from './ranking/earned.ts'
export { type RankingRequest, rankEvent } from './ranking/rank.ts'
export type * from './ranking/types.ts'
// Results
export { checkResults } from './results.ts'
export { otherAlliance, positionOf, type Seated, seatKey, seatOf, seats, slotAt, slotsOf } from './seats.ts'
export { type EventSaid, eventSentences, type Named, tellEvent } from './sentences.ts'
// Tables
export type { CellFault, ReadLine } from './table/cells.ts'
export * from './table/columns.ts'
export { placeResults, readResults, resultColumnsOf, type ToldResult } from './table/results.ts'
export { placeMatches, readSchedule, type ScheduleDefaults, type Told } from './table/schedule.ts'
export { momentOf } from './table/time.ts'
