import { randomUUID } from 'node:crypto'
import type * as z from 'zod'
import type { Observation, Row } from '../../model/scouting/index.ts'
import type { Successor } from '../../store/types.ts'
import { row as rowContract } from '../contracts/scouting/index.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { knownOf } from './known.ts'
import type { correctRequest, swapRequest } from './leadContracts.ts'
import { hashed } from './rows.ts'

type ObservationRow = Extract<Row, { kind: 'observation' }>

const changedMeanwhile = (message: string, path: string[]) => new ApiError({ code: 'conflict', message, path })

/** The device that corrections made on this server are counted under. */
const deviceOf = ({ who }: Context): string => who.device ?? 'server'

/** The same observation as a further record that takes the place of the first; who saw it stays who saw it. */
function successor(
  { row, change, reason, ctx }: { row: ObservationRow; change: Partial<Observation>; reason: string; ctx: Context },
  { sequence, seat }: { sequence: number; seat?: Row['seat'] },
): Successor {
  const id = randomUUID()
  const device = deviceOf(ctx)
  const body = { ...row.body, ...change, id, device, sequence, replaces: row.id }
  const next = { ...row, id, device, sequence, reason, made: new Date().toISOString(), body, ...(seat && { seat }) }
  // What is left out of a change is not a field without a value.
  return { hashed: hashed(rowContract.parse(JSON.parse(JSON.stringify(next)))), replaces: row.id }
}

async function keep(ctx: Context, successors: Successor[], event: string) {
  const outcome = await ctx.workspace.records.replace(successors, ctx.who.person)
  if ('stale' in outcome) {
    throw changedMeanwhile('Somebody has corrected one of these records in between; look at what it says now', [
      'record',
    ])
  }
  ctx.tell({ event, what: 'records' })
  return { added: successors.map(({ hashed: { row } }) => row.id) }
}

const nextSequence = async (ctx: Context) => (await ctx.workspace.records.receipt(deviceOf(ctx))).held + 1

export async function correct(ctx: Context, of: z.infer<typeof correctRequest>) {
  const { event, record, changes, clear = [], seat, reason } = of
  const [found] = await ctx.workspace.records.get([record])
  if (found?.row.kind !== 'observation' || found.row.event !== event) {
    throw new ApiError({
      code: 'notFound',
      message: `There is no observation ${record} in this event`,
      path: ['record'],
    })
  }
  const cleared = Object.fromEntries(clear.map((field) => [field, undefined]))
  const change = { ...changes, ...cleared } as Partial<Observation>
  const sequence = await nextSequence(ctx)
  return keep(ctx, [successor({ row: found.row, change, reason, ctx }, { sequence, seat })], event)
}

/** Two robots were taken for each other: each record gets the other one's team and place. Done again, it is undone. */
export async function swap(ctx: Context, { event, match, records: ids, reason }: z.infer<typeof swapRequest>) {
  const { known } = await knownOf(ctx, event)
  const there = known.inForce.filter(
    ({ row, team }) => row.kind === 'observation' && row.body.match === match && team !== null,
  )
  const teams = [...new Set(there.filter(({ row }) => ids.includes(row.id)).map(({ team }) => team!))]
  const concerned = there.filter(({ team }) => teams.includes(team!))
  const missing = ids.find((id) => !there.some(({ row }) => row.id === id))
  if (missing !== undefined || concerned.some(({ row }) => !ids.includes(row.id))) {
    throw changedMeanwhile('Something has changed about these two robots in between; look at it again', ['records'])
  }
  if (teams.length !== 2) {
    const message = `The records must be of two robots, got ${teams.length === 1 ? 'one' : teams.length}`
    throw new ApiError({ code: 'malformed', message, path: ['records'] })
  }
  const seats = new Map(concerned.map(({ row, team }) => [team!, row.seat]))
  const first = await nextSequence(ctx)
  const successors = concerned.map(({ row, team }, index) => {
    const other = teams[0] === team ? teams[1]! : teams[0]!
    const seat = seats.get(other)
    // A record that is known by its place stays so only where the other robot's place is known.
    const identifiedBy = seat === undefined ? { identifiedBy: 'number' as const } : {}
    const change = { team: other, ...identifiedBy }
    return successor({ row: row as ObservationRow, change, reason, ctx }, { sequence: first + index, seat })
  })
  return keep(ctx, successors, event)
}
