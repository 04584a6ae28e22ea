import {
  arrivals,
  type Contradiction,
  contradictions,
  currentRecords,
  matchOf,
  type Row,
} from '../../model/scouting/index.ts'
import type { Device, StoredDrill, StoredRecord } from '../../store/types.ts'
import { notFound, read } from '../documents/read.ts'
import type { Context } from '../trpc.ts'
import { resolved } from './resolved.ts'

type Resolved = ReturnType<typeof resolved>[number]

/** All observations of an event that no other has taken the place of. */
export async function inForce({ workspace }: Pick<Context, 'workspace'>, event: string): Promise<Resolved[]> {
  const { records } = workspace
  return currentRecords(resolved(await records.list(event), await records.schedule(event)))
}

const observationsIn = (records: readonly Resolved[]) =>
  records.flatMap(({ row, team }) =>
    row.kind === 'observation' && team !== null ? [{ observation: row.body, team }] : [],
  )

/** What a rehearsal says of a phone. */
function drilled(device: Device, drill: StoredDrill | null, records: readonly StoredRecord[]) {
  if (!drill) return null
  const has = records.some(
    ({ row, receivedAt }) =>
      row.kind === 'drill' &&
      row.body.drill === drill.id &&
      (row.device === device.id || row.scout === device.person) &&
      receivedAt >= drill.startedAt,
  )
  if (has) return device.unsent > 0 ? ('holds' as const) : ('passed' as const)
  return device.lastSeenAt < drill.startedAt ? ('notSeen' as const) : ('noRecord' as const)
}

function phoneOf(device: Device, drill: StoredDrill | null, records: readonly StoredRecord[]) {
  const { id, name, person, nickname, lastSeenAt, unsent } = device
  const held = records.filter(({ row }) => row.device === id).length
  return { device: id, name, person, nickname, lastSeenAt, unsent, held, drill: drilled(device, drill, records) }
}

const correctionOf = ({ row, replaces, team, person, receivedAt }: Resolved) => ({
  record: row.id,
  replaces: replaces!,
  match: matchOf(row),
  team,
  person,
  reason: (row as Row).reason ?? null,
  receivedAt,
})

/** Everything that a lead watches while records come in. */
export async function boardOf({ workspace }: Pick<Context, 'workspace'>, event: string) {
  const found = await read(workspace, 'event', { id: event })
  if (!found) throw notFound('event', { id: event })
  const game = await read(workspace, 'game', { id: found.body.game })
  const { records: store, events, people } = workspace
  const matches = (await events.matches(event)).matches.map(({ match }) => match)
  const schedule = new Map(matches.map((match) => [match.id, match]))
  const records = resolved(await store.list(event), schedule)
  const watched = observationsIn(currentRecords(records))
  const counted = new Set((await events.results(event)).flatMap(({ match, result }) => (result ? [match] : [])))
  const { assignments } = await events.assignments(event)
  const [drill = null] = await store.drills(event)
  const devices = (await people.devices()).filter(({ revokedAt }) => revokedAt === null)
  const told: Contradiction[] = game ? contradictions({ game: game.body, matches: schedule }, watched) : []
  return {
    matches: arrivals({ matches, assignments, records: watched, counted }),
    phones: devices.map((device) => phoneOf(device, drill, records)),
    contradictions: told,
    corrections: records.filter(({ replaces }) => replaces !== null).map(correctionOf),
    quarantined: (await store.apart(event)).filter(({ resolution }) => resolution === null).length,
    drill,
    people: [
      ...(await people.list()).map(({ id, nickname }) => ({ id, nickname })),
      ...(await workspace.exchange.named()),
    ],
  }
}
