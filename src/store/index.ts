// Copies

export { type ScheduleOptions, scheduleBackups } from './backups/schedule.ts'
export { backupReasons } from './backups/types.ts'
// Jobs

// Opening and keeping
export { isAway, isFull, StorageFull, StoreError } from './errors.ts'
// Forecasts
export { forecastId } from './forecasts/rows.ts'
export { jobDays, jobEvents, jobStates, mostKeptJobs } from './jobs/types.ts'
export { type MovedTable, moveWorkspace } from './move/move.ts'
export { type OpenOptions, openStore } from './open.ts'
// People
export { sessionDays } from './people/types.ts'
// Agreed plans
export { planId } from './plans/rows.ts'
// Rounds of guesses
export { mostCorrections, mostDevices, mostRounds } from './rounds/types.ts'
// What is kept
export type * from './types.ts'
// Workspaces
export { onlyWorkspace } from './workspaces.ts'
