import * as z from 'zod'
import { TooManyJobs } from '../../jobs/index.ts'
import { jobDays, mostKeptJobs } from '../../store/index.ts'
import { longWorks } from '../compute/longWorks.ts'
import { ApiError, type Code } from '../errors.ts'
import { type Endpoint, procedure, router } from '../trpc.ts'
import { may } from '../who.ts'
import { job, jobRequest, jobWithResult, oneJob } from './contracts.ts'

const jobs = '/api/jobs'
const one = `${jobs}/{id}`
const reading: readonly Code[] = ['malformed', 'notFound']
const writing: readonly Code[] = [...reading, 'forbidden', 'tooLarge', 'notJson']

const endpoint = (offered: Endpoint): { endpoint: Endpoint } => ({ endpoint: offered })

export const noJob = (id: string) =>
  new ApiError({
    code: 'notFound',
    message: `There is no job ${id}. Jobs are kept for ${jobDays} days after their end, the newest ${mostKeptJobs} of them`,
    path: ['id'],
  })

/** Anything but null; null is a job that is not there. */
function found<T>(value: T | null, id: string): T {
  if (value === null) throw noJob(id)
  return value
}

/** Checks what the job's own address would check. Paths begin in the job. */
function check({ kind, request }: z.infer<typeof jobRequest>): void {
  try {
    longWorks[kind].check(request as never)
  } catch (error) {
    if (!(error instanceof ApiError)) throw error
    const { path, problems, ...failure } = error.failure
    throw new ApiError({
      ...failure,
      path: ['request', ...(path ?? [])],
      ...(problems && { problems: problems.map((each) => ({ ...each, path: ['request', ...each.path] })) }),
    })
  }
}

/** Long computations that go on while nobody waits. Their events are a stream of their own (`events.ts`). */
export const jobsRouter = router({
  start: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: jobs,
        may: may.compute,
        summary: 'Starts a long computation as a job: what /api/compute/match, lineup or compare is asked for',
        answer: job,
        errors: [...writing.filter((code) => code !== 'notFound'), 'notOffered', 'busy'],
      }),
    )
    .input(jobRequest)
    .mutation(async ({ input, ctx }) => {
      check(input)
      const { kind, name = null, request } = input
      try {
        return await ctx.jobs.start({ kind, name, request })
      } catch (error) {
        if (!(error instanceof TooManyJobs)) throw error
        const { running, waiting } = error.limits
        const message = `The server computes ${running} jobs at a time and lets ${waiting} wait, and there are as many now: cancel one, or ask again when one has ended`
        throw new ApiError({ code: 'busy', message, retryAfter: 30 })
      }
    }),

  list: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: jobs,
        may: may.read,
        summary: `All jobs, newest first; ended ones are kept for ${jobDays} days, the newest ${mostKeptJobs} of them`,
        answer: z.array(job),
      }),
    )
    .input(z.strictObject({}))
    .query(({ ctx }) => ctx.jobs.list()),

  get: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: one,
        may: may.read,
        summary: 'A job: how far it is, what it was asked and, when it is done, its result',
        answer: jobWithResult,
        errors: reading,
      }),
    )
    .input(oneJob)
    .query(async ({ input: { id }, ctx }) => found(await ctx.jobs.get(id), id)),

  cancel: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: `${one}/cancel`,
        may: may.compute,
        summary: 'Ends a job that waits or runs; one that has ended stays as it is',
        answer: job,
        errors: writing,
      }),
    )
    .input(oneJob)
    .mutation(async ({ input: { id }, ctx }) => found(await ctx.jobs.cancel(id), id)),

  remove: procedure
    .meta(
      endpoint({
        method: 'DELETE',
        path: one,
        may: may.compute,
        summary: 'Takes a job away for good, with its result; one that is not over is cancelled first',
        answer: z.strictObject({ removed: z.literal(true) }),
        errors: [...reading, 'forbidden'],
      }),
    )
    .input(oneJob)
    .mutation(async ({ input: { id }, ctx }) => {
      if (!(await ctx.jobs.remove(id))) throw noJob(id)
      return { removed: true as const }
    }),
})
