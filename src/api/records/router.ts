import { StorageFull } from '../../store/index.ts'
import type { Batch, Cells, SharedRows } from '../../store/types.ts'
import { ApiError, type Code } from '../errors.ts'
import { type Context, type Endpoint, procedure, router } from '../trpc.ts'
import { may, type Who } from '../who.ts'
import { accepted, acceptRequest, listRequest, mostRead, recordList } from './contracts.ts'
import { DeviceLimit } from './limit.ts'
import type { RowRead } from './reading/batch.ts'
import { SentRows } from './reading/sent.ts'
import { resolved } from './resolved.ts'
import { answerOf, answersOf, isStranger, ofStranger, readRow } from './rows.ts'

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

const isRead = (row: RowRead): row is Cells => !('refused' in row)
const isShared = (rows: SentRows['read']): rows is SharedRows => 'heads' in rows

/** A row as it can be kept, or why it can not: by its form, or by whose it is. */
function own(row: RowRead, who: Who): RowRead {
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
      const hand = (rows: Batch['rows']) =>
        accept(ctx, { device, unsent, app, person: who.person, session: who.device, rows })
      const each = async (read: readonly RowRead[]) => {
        const rows = read.map((row) => own(row, who))
        const accepted = await hand(rows.filter(isRead))
        return { accepted, answers: answersOf(rows, accepted.outcomes) }
      }
      const all = async ({ read, of }: SentRows) => {
        if (!isShared(read)) return each(read)
        if (read.scouts.some((scout) => isStranger(scout, who))) return each(await of.whole())
        const accepted = await hand(read)
        const { outcomes } = accepted
        // Of what was known from before something is not held any more, and is handed in anew.
        if (outcomes.some(({ outcome }) => outcome === 'missing')) return each(await of.whole())
        if (outcomes.every(({ outcome }) => outcome === 'held')) of.remember()
        return { accepted, answers: read.ids.split('\n').map((id, index) => answerOf(id, outcomes[index]!)) }
      }
      const handed = sent[0]
      const { accepted, answers } = await (handed instanceof SentRows ? all(handed) : each(sent.map(readRow)))
      for (const event of accepted.fresh) ctx.tell({ event, what: 'records' })
      for (const event of accepted.apart) ctx.tell({ event, what: 'quarantine' })
      return { answers, receipt: accepted.receipt }
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
