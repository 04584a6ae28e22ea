import { randomUUID } from 'node:crypto'
import type * as z from 'zod'
import type { Row } from '../../model/scouting/index.ts'
import type { ApartRecord } from '../../store/types.ts'
import { row as rowContract } from '../contracts/scouting/index.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import type { resolveRequest } from './leadContracts.ts'
import { hashed } from './rows.ts'

/** What was kept apart, each beside what came first under its id. */
export async function listApart({ workspace: { records } }: Context, event: string) {
  const apart = await records.apart(event)
  const ours = new Map((await records.get(apart.map(({ row }) => row.id))).map(({ row }) => [row.id, row]))
  return apart.map((each) => ({ ...each, ours: ours.get(each.row.id) ?? null }))
}

/** Theirs under an id of its own, in the place of ours; unchanged where nothing of ours is there. */
function taken(
  { row }: ApartRecord,
  ours: Row | null,
  { event, reason }: { event: string; reason: string | undefined },
) {
  if (!ours) return { hashed: hashed({ ...row, event }), replaces: null }
  const id = randomUUID()
  const own =
    row.kind === 'observation'
      ? { ...row.body, id, replaces: ours.id }
      : row.kind === 'photo'
        ? { ...row.body, id }
        : row.body
  const next = rowContract.parse({ ...row, event, id, body: own, ...(reason === undefined ? {} : { reason }) })
  return { hashed: hashed(next), replaces: ours.id }
}

export async function decide(ctx: Context, { event, arrival, resolution, reason }: z.infer<typeof resolveRequest>) {
  const found = (await listApart(ctx, event)).find((each) => each.arrival === arrival)
  if (!found) {
    throw new ApiError({ code: 'notFound', message: `Nothing was kept apart under ${arrival}`, path: ['arrival'] })
  }
  const adds = resolution === 'replaced' ? taken(found, found.ours, { event, reason }) : null
  const done = await ctx.workspace.records.resolve(arrival, {
    resolution,
    person: ctx.who.person,
    ...(adds && { adds }),
  })
  if (!done) {
    throw new ApiError({ code: 'conflict', message: 'Somebody has decided over this already', path: ['arrival'] })
  }
  ctx.tell({ event, what: 'quarantine' })
  if (adds) ctx.tell({ event, what: 'records' })
  return { added: adds ? [adds.hashed.row.id] : [] }
}
