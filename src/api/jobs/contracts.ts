import * as z from 'zod'
import { jobDays, jobEvents, jobStates, mostKeptJobs } from '../../store/index.ts'
import type { JobSummary } from '../../store/types.ts'
import {
  compareAnswer,
  compareRequest,
  lineupAnswer,
  lineupRequest,
  matchAnswer,
  matchRequest,
  name,
} from '../contracts/index.ts'

const called = name.optional().describe('What you call it')

/** One of the long computations, asked for as its own address is. */
export const jobRequest = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('match'), name: called, request: matchRequest }),
  z.strictObject({ kind: z.literal('lineup'), name: called, request: lineupRequest }),
  z.strictObject({ kind: z.literal('compare'), name: called, request: compareRequest }),
])

export type JobKind = z.infer<typeof jobRequest>['kind']

export const jobId = z.uuid().describe('Id of the job')
export const oneJob = z.strictObject({ id: jobId })

const moment = z.string().nullable()

const summary = z.strictObject({
  id: z.string(),
  kind: z.string().describe('match, lineup or compare'),
  name: z.string().nullable(),
  state: z
    .enum(jobStates)
    .describe(
      'interrupted: the server stopped before it was over. What has ended is changed no more, and kept for ' +
        `${jobDays} days, the newest ${mostKeptJobs} of all`,
    ),
  askedAt: z.string().describe('ISO 8601'),
  startedAt: moment,
  endedAt: moment,
  done: z.number().describe('How far it is: matches, or parts of a comparison'),
  total: z.number().nullable().describe('Null while it is not known yet'),
  replaced: z.number().describe('Threads that died over it; what they were at was done again'),
  failure: z
    .strictObject({
      code: z.string(),
      message: z.string(),
      path: z.array(z.union([z.string(), z.int()])).optional(),
    })
    .nullable()
    .describe('Why there is no result'),
})

export const job = summary.meta({ id: 'Job' })
job satisfies z.ZodType<JobSummary>

export const jobWithResult = z
  .strictObject({
    ...summary.shape,
    request: z.union([matchRequest, lineupRequest, compareRequest]).describe('As it was asked for'),
    result: z
      .union([matchAnswer, lineupAnswer, compareAnswer])
      .nullable()
      .describe('What its own address would have answered; null unless it is done'),
  })
  .meta({ id: 'JobWithResult' })

/** Data of the events `asked`, `started`, `threadReplaced` and `ended`; their ids are counted from 1. */
export const jobEvent = z
  .strictObject({ kind: z.enum(jobEvents), at: z.string().describe('ISO 8601'), job })
  .meta({ id: 'JobEvent' })

/** Data of the event `progress`, which has no id. */
export const jobProgress = z
  .strictObject({ done: z.number(), total: z.number().nullable() })
  .meta({ id: 'JobProgress' })
