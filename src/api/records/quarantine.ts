import { randomUUID } from 'node:crypto'
import type * as z from 'zod'
import { canonicalJson, type Row } from '../../model/scouting/index.ts'
import type { ApartRecord, HashedRow } from '../../store/types.ts'
import { row as rowContract } from '../contracts/scouting/index.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import type { resolveRequest } from './leadContracts.ts'
import { hashed } from './rows.ts'

/** What was kept apart, each beside what came first under its id. */
export async function listApart({ workspace: { records } }: Context, event: string) {
  const apart = await records.apart(event)
  const ours = new Map((await records.get(apart.map(({ row }) => row.id))).map(({ row }) => [row.id, row]))
  return apart.map((each) => {
    const first = ours.get(each.row.id)
    // One that was taken into the event under its own id did not come before itself.
    return { ...each, ours: first && !sameContent(first, each.row) ? first : null }
  })
}

/** Everything but the name it goes by, where it was put, and why. */
function contentOf({ id: _, event: _event, reason: _reason, body, ...way }: Row): string {
  const { id: _own, replaces: _replaced, ...said } = body as { id?: string; replaces?: string }
  return canonicalJson({ ...way, body: said })
}

const sameContent = (one: Row, other: Row): boolean => contentOf(one) === contentOf(other)

type Added = { hashed: HashedRow; replaces: string | null }

/** Says again what a row says, under an id of its own, in the place of what is in force; under its own where nothing is there. */
function again(row: Row, { replaces, event, reason }: Pick<Added, 'replaces'> & Why): Added {
  if (replaces === null) return { hashed: hashed({ ...row, event }), replaces }
  const id = randomUUID()
  const own =
    row.kind === 'observation' ? { ...row.body, id, replaces } : row.kind === 'photo' ? { ...row.body, id } : row.body
  const { reason: _, ...rest } = row
  const next = rowContract.parse({ ...rest, event, id, body: own, ...(reason === undefined ? {} : { reason }) })
  return { hashed: hashed(next), replaces }
}

interface Why {
  event: string
  reason: string | undefined
}

/** Nothing in the place of a record that came in alone. */
function withdrawn(row: Row, { replaces, event, reason }: { replaces: string } & Why): Added {
  const { device, sequence, scout, made } = row
  const body = { record: replaces }
  const way = { id: randomUUID(), device, sequence, scout, made, event, ...(reason === undefined ? {} : { reason }) }
  return { hashed: hashed({ ...way, kind: 'withdrawal', body }), replaces }
}

/**
 * What has to be added so that the row counts, or does not any more. Null: nothing. Undefined: the row is not where it was put.
 * @param others what else came under the same id, and whether it was taken
 */
function following(
  { row }: ApartRecord,
  { chain, others }: { chain: readonly Row[]; others: readonly Pick<ApartRecord, 'row' | 'resolution'>[] },
  { counts, ...why }: { counts: boolean } & Why,
): Added | null | undefined {
  const replaces = chain.at(-1)?.id ?? null
  if (counts) return again(row, { replaces, ...why })
  const added = chain.findLastIndex((each) => sameContent(each, row))
  if (added < 0 || replaces === null) return undefined
  // What was taken after it took its place already.
  const isOf = (each: Row, taken: boolean) =>
    others.some((other) => (other.resolution === 'replaced') === taken && sameContent(each, other.row))
  if (chain.slice(added + 1).some((each) => isOf(each, true))) return null
  // Not what was refused meanwhile, nor this row where it counted before.
  const before = chain.slice(0, added).findLast((each) => !isOf(each, false) && !sameContent(each, row))
  return before && before.kind !== 'withdrawal'
    ? again(before, { replaces, ...why })
    : withdrawn(row, { replaces, ...why })
}

const conflict = (message: string) => new ApiError({ code: 'conflict', message, path: ['arrival'] })

export async function decide(ctx: Context, input: z.infer<typeof resolveRequest>) {
  const { event, arrival, resolution, before = null, reason } = input
  const { records } = ctx.workspace
  const apart = await records.apart(event)
  const found = apart.find((each) => each.arrival === arrival)
  if (!found) {
    throw new ApiError({ code: 'notFound', message: `Nothing was kept apart under ${arrival}`, path: ['arrival'] })
  }
  if (found.resolution !== before) throw conflict('Somebody has decided over this already')
  const counts = resolution === 'replaced'
  let adds: Added | null | undefined = null
  if (counts !== (before === 'replaced')) {
    const chain = (await records.chain(found.row.id)).map(({ row }) => row)
    const others = apart.filter((each) => each !== found && each.row.id === found.row.id)
    adds = following(found, { chain, others }, { counts, event, reason })
    if (adds === undefined) throw conflict('What was taken is not to be found any more; correct the record itself')
  }
  if (!(await records.resolve(arrival, { before, resolution, person: ctx.who.person, adds: adds ?? undefined }))) {
    throw conflict('Somebody has decided over this, or corrected the record, in between; look at it again')
  }
  ctx.tell({ event, what: 'quarantine' })
  if (adds) ctx.tell({ event, what: 'records' })
  return { added: adds ? [adds.hashed.row.id] : [] }
}
