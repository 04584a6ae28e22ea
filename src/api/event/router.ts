import { router } from '../trpc.ts'
import { assignmentsRouter } from './assignments.ts'
import { rankingProcedure } from './ranking.ts'
import { resultsRouter } from './results.ts'
import { scheduleRouter } from './schedule.ts'

/** Who plays when, what officials counted, how teams rank, and who watches whom. */
export const event = router({
  schedule: scheduleRouter,
  results: resultsRouter,
  assignments: assignmentsRouter,
  ranking: rankingProcedure,
})
