import { StorageFull } from '../../store/index.ts'
import type { Batch, Cells } from '../../store/types.ts'
import { ApiError, type Code } from '../errors.ts'
import { type Context, type Endpoint, procedure, router } from '../trpc.ts'
import { may, type Who } from '../who.ts'
import { accepted, acceptRequest, listRequest, mostRead, recordList } from './contracts.ts'
import { DeviceLimit } from './limit.ts'
import { SentRow } from './reading/sent.ts'
import { resolved } from './resolved.ts'
import { answersOf, ofStranger, type Refused, readRow } from './rows.ts'

const address = '/api/records'
const writing: readonly Code[] = ['malformed', 'forbidden', 'tooLarge', 'notJson', 'tooMany', 'storageFull']

const endpoint = (offered: Endpoint): { endpoint: Endpoint } => ({ endpoint: offered })

const full = () =>
  new ApiError({
    code: 'storageFull',
    message: 'The server’s disk is full. Nothing of this was taken: keep it, and tell a lead',
    retryAfter: 60,
  })

async function accept(ctx: Context, batch: Batch) {
  try {
    return await ctx.workspace.records.accept(batch)
  } catch (error) {
    throw error instanceof StorageFull ? full() : error
  }
}

const isRead = (row: Cells | Refused): row is Cells => !('refused' in row)

/** A row as it can be kept, or why it can not: by its form, or by whose it is. */
function own(row: Cells | Refused, who: Who): Cells | Refused {
  return isRead(row) ? (ofStranger(row, who) ?? row) : row
}

const limits = new WeakMap<object, DeviceLimit>()

/** One count for each server. */
function limitOf({ store }: Context): DeviceLimit {
  const limit = limits.get(store) ?? new DeviceLimit()
  limits.set(store, limit)
  return limit
}

/** What scouts recorded. */
export const recordsRouter = router({
  accept: procedure
    .meta(
      endpoint({
        method: 'POST',
        path: address,
        may: may.member,
        // Records are a log themselves, and say who handed them in.
        audit: false,
        readByThread: true,
        summary: 'Takes what a device recorded. Each row is answered by itself, and sending it again does no harm',
        answer: accepted,
        errors: writing,
      }),
    )
    .input(acceptRequest)
    .mutation(async ({ input, ctx }) => {
      const { device, unsent, app, rows: sent } = input
      const { who } = ctx
      limitOf(ctx).count(who.device ?? device, performance.now())
      const source = sent[0] instanceof SentRow ? sent[0].of : undefined
      const first = sent.map((each) => (each instanceof SentRow ? each.read : readRow(each)))
      const take = async (read: readonly (Cells | Refused)[]) => {
        const rows = read.map((row) => own(row, who))
        const kept = rows.filter(isRead)
        // Where some are left out, those that are left have no bodies, are missing, and are handed in with them.
        const packed = read === first && kept.length === rows.length ? source?.packed : undefined
        const batch = { device, unsent, app, person: who.person, session: who.device, rows: kept, packed }
        return { rows, accepted: await accept(ctx, batch) }
      }
      let taken = await take(first)
      if (source && taken.accepted.outcomes.some(({ outcome }) => outcome === 'missing')) {
        taken = await take(await source.whole())
      }
      const { rows, accepted } = taken
      const { outcomes, receipt, fresh, apart } = accepted
      if (source && rows.every(isRead) && outcomes.every(({ outcome }) => outcome === 'held')) source.remember(rows)
      for (const event of fresh) ctx.tell({ event, what: 'records' })
      for (const event of apart) ctx.tell({ event, what: 'quarantine' })
      return { answers: answersOf(rows, outcomes), receipt }
    }),

  list: procedure
    .meta(
      endpoint({
        method: 'GET',
        path: address,
        may: may.read,
        summary: 'What was recorded of an event, in the order of its arrival, each with whom it is about',
        answer: recordList,
        errors: ['malformed'],
      }),
    )
    .input(listRequest)
    .query(async ({ input: { event, after, limit = mostRead, kinds }, ctx }) => {
      const { records } = ctx.workspace
      const found = await records.list(event, { after, limit, kinds })
      const next = found.length < limit ? null : found.at(-1)!.arrival
      return { records: resolved(found, await records.schedule(event)), next }
    }),
})
