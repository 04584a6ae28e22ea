import { inMatch, matchOf, type Row } from '../../model/scouting/index.ts'
import type { Device, EventLog, StoredDrill } from '../../store/types.ts'
import type { Context } from '../trpc.ts'
import { candidateOf, type Known, knownOf, type Resolved } from './known.ts'

/** What a rehearsal says of a phone. */
function drilled(device: Device, drill: StoredDrill | null, records: readonly Resolved[]) {
  if (!drill) return null
  const has = records.some(
    ({ row, receivedAt }) =>
      row.kind === 'drill' &&
      row.body.drill === drill.id &&
      (row.device === device.id || row.scout === device.person) &&
      receivedAt >= drill.startedAt,
  )
  if (has) return device.unsent > 0 ? ('holds' as const) : ('passed' as const)
  // When a device was seen is kept to a minute.
  const seen = Date.parse(device.lastSeenAt) >= Date.parse(drill.startedAt) - 60_000
  return seen ? ('noRecord' as const) : ('notSeen' as const)
}

interface Of {
  drill: StoredDrill | null
  log: EventLog
  known: Known
  /** By device, the revision of the game of its newest observation. */
  forms: ReadonlyMap<string, number>
}

function phoneOf(device: Device, of: Of) {
  const { id, name, person, nickname, lastSeenAt, unsent } = device
  const held = of.log.held.get(id) ?? 0
  return {
    device: id,
    name,
    person,
    nickname,
    lastSeenAt,
    silent: Math.max(0, Math.round((Date.now() - Date.parse(lastSeenAt)) / 1000)),
    form: of.forms.get(id) ?? null,
    signedOut: device.revokedAt !== null,
    unsent,
    held,
    drill: drilled(device, of.drill, of.known.records),
  }
}

/** @param byId what is about nothing itself, a withdrawal, is about what it took out */
const correctionOf = ({ row, replaces, team, person, receivedAt }: Resolved, byId: ReadonlyMap<string, Resolved>) => {
  const about = (row.kind === 'withdrawal' && byId.get(row.body.record)) || { row, team }
  return {
    record: row.id,
    replaces: replaces!,
    match: matchOf(about.row),
    team: about.team,
    person,
    reason: (row as Row).reason ?? null,
    receivedAt,
  }
}

/** Everything that a lead watches while records come in. */
export async function boardOf(ctx: Pick<Context, 'workspace'>, event: string) {
  const { records: store, people } = ctx.workspace
  const { log, known } = await knownOf(ctx, event)
  const [drill = null] = await store.drills(event)
  // One that was signed out with something on it still holds it, and can show or save it.
  const devices = (await people.devices()).filter(({ revokedAt, unsent }) => revokedAt === null || unsent > 0)
  const matches = known.matches.map((each) => ({
    ...each,
    seats: each.seats.map((seat) => ({ ...seat, chosen: known.chosen.get(inMatch(each.match, seat.team)) ?? null })),
  }))
  const forms = new Map(
    known.records.flatMap(({ row }) => (row.kind === 'observation' ? [[row.device, row.body.game] as const] : [])),
  )
  const byId = new Map(known.records.map((record) => [record.row.id, record]))
  return {
    matches,
    phones: devices.map((device) => phoneOf(device, { drill, log, known, forms })),
    contradictions: [...known.contradictions],
    corrections: known.records.filter(({ replaces }) => replaces !== null).map((each) => correctionOf(each, byId)),
    quarantined: await store.waiting(event),
    drill,
    people: [
      ...(await people.list()).map(({ id, nickname }) => ({ id, nickname })),
      ...(await ctx.workspace.exchange.named()),
    ],
  }
}

/** Observations in force of a match, or of runs outside of matches (null), each with whether it counts. */
export async function observationsOf(ctx: Pick<Context, 'workspace'>, event: string, match: string | null) {
  const { known } = await knownOf(ctx, event)
  return known.inForce.flatMap((record) => {
    const { row, team, arrival, receivedAt, replaces, person } = record
    if (row.kind !== 'observation' || team === null || row.body.match !== match) return []
    const candidate = candidateOf(record)
    const only = candidate.match === null ? undefined : known.chosen.get(inMatch(candidate.match, team))
    return [{ arrival, receivedAt, row, replaces, person, team, counts: only === undefined || only === row.id }]
  })
}
