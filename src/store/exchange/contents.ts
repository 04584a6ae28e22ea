import { setImmediate as breath } from 'node:timers/promises'
import type { Game } from '../../model/documents/types.ts'
import type { EventContents, KeptDrill } from '../../model/event/archive/index.ts'
import type { EventRecord, Row } from '../../model/scouting/types.ts'
import { assignmentOf, matchOf, resultOf } from '../event/rows.ts'
import type { Scope } from '../event/schedule.ts'
import { readForecasts } from '../forecasts/rows.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { readPlans } from '../plans/rows.ts'
import { apartRowsOf, readChoices } from '../records/lead.ts'
import { recordColumns, recordOf } from '../records/rows.ts'
import { readLines } from '../selection/rows.ts'
import { forgotten, nicknames } from './people.ts'

/** Everything of an event, or all but its records. Within a transaction, so that all of it is of one moment. */
export async function readContents(
  client: TransactionClient,
  scope: Scope,
  { records = true }: { records?: boolean } = {},
): Promise<EventContents | null> {
  const event = await readRevisions(client, scope)
  if (event.length === 0) return null
  const parts = {
    matches: await readMatches(client, scope),
    results: await readAllResults(client, scope),
    assignments: await readAllAssignments(client, scope),
    records: records ? await readRecords(client, scope) : [],
    apart: await readAllApart(client, scope),
    choices: await readChoices(client, scope.workspaceId, scope.event),
    drills: await readAllDrills(client, scope),
    forecasts: await readForecasts(client, scope),
    plans: await readPlans(client, scope),
    selection: await readLines(client, scope),
  }
  const rules = await readRules(client, scope.workspaceId, event.at(-1)!.body.game, parts.records)
  const names = await nicknames(client, scope.workspaceId, idsIn(parts))
  const people = [...names]
    .map(([id, nickname]) => ({ id, nickname }))
    .filter(({ nickname }) => nickname !== forgotten)
    .sort((a, b) => (a.id < b.id ? -1 : 1))
  return { event, rules, ...parts, people }
}

async function readRevisions(
  client: TransactionClient,
  { workspaceId, event }: Scope,
): Promise<EventContents['event']> {
  const where = { workspaceId, kind: 'event', id: event }
  const rows = await client.revision.findMany({ where, orderBy: { revision: 'asc' } })
  return rows.map(({ revision, body, note, savedAt }) => ({
    ...{ revision, note },
    body: JSON.parse(body) as EventRecord,
    savedAt: savedAt.toISOString(),
  }))
}

async function readMatches(client: TransactionClient, scope: Scope): Promise<EventContents['matches']> {
  const rows = await client.scheduledMatch.findMany({ where: scope, orderBy: { id: 'asc' } })
  return rows.map((row) => ({ ...matchOf(row), removed: row.removed }))
}

async function readAllResults(client: TransactionClient, scope: Scope): Promise<EventContents['results']> {
  const orderBy = [{ match: 'asc' as const }, { revision: 'asc' as const }]
  return (await client.officialResult.findMany({ where: scope, orderBy })).map(resultOf)
}

async function readAllAssignments(client: TransactionClient, scope: Scope): Promise<EventContents['assignments']> {
  const orderBy = [{ match: 'asc' as const }, { alliance: 'asc' as const }, { position: 'asc' as const }]
  const rows = await client.seatAssignment.findMany({ where: scope, orderBy })
  return rows.map((row) => ({ ...assignmentOf(row), since: row.since.toISOString() }))
}

/** Records that are read at once: some of them are photos, and nobody is answered while they are taken apart. */
const mostRead = 60

async function readRecords(client: TransactionClient, scope: Scope): Promise<EventContents['records']> {
  const found: EventContents['records'] = []
  let after = 0
  while (true) {
    const rows = await client.fieldRecord.findMany({
      where: { ...scope, arrival: { gt: after } },
      orderBy: { arrival: 'asc' },
      select: recordColumns,
      take: mostRead,
    })
    for (const row of rows) {
      const { arrival, ...kept } = recordOf(row)
      found.push(kept)
      after = arrival
    }
    if (rows.length < mostRead) return found
    await breath()
  }
}

async function readAllApart(client: TransactionClient, scope: Scope): Promise<EventContents['apart']> {
  const rows = await client.quarantinedRecord.findMany({ where: scope, orderBy: { arrival: 'asc' } })
  return apartRowsOf(rows).map(({ arrival: _, ...kept }) => kept)
}

async function readAllDrills(client: TransactionClient, scope: Scope): Promise<KeptDrill[]> {
  const rows = await client.drill.findMany({ where: scope, orderBy: { id: 'asc' } })
  return rows.map(({ id, startedAt, endedAt, startedBy }) => ({
    ...{ id, startedBy },
    startedAt: startedAt.toISOString(),
    endedAt: endedAt?.toISOString() ?? null,
  }))
}

/** The revisions of the game that records name, as far as they are here, and the newest. */
async function readRules(
  client: TransactionClient,
  workspaceId: string,
  game: string,
  records: readonly { row: Row }[],
): Promise<EventContents['rules']> {
  const key = { workspaceId, kind: 'game', id: game }
  const document = await client.document.findUnique({ where: { workspaceId_kind_id: key } })
  if (!document) return []
  const named = records.flatMap(({ row }) => (row.kind === 'observation' ? [row.body.game] : []))
  const rows = await client.revision.findMany({
    where: { ...key, revision: { in: [...new Set([...named, document.revision])] } },
    orderBy: { revision: 'asc' },
  })
  return rows.map(({ revision, body }) => ({ revision, body: JSON.parse(body) as Game }))
}

/** Ids of everybody who stands in it. */
function idsIn(of: Omit<EventContents, 'event' | 'rules' | 'people'>): Set<string> {
  const ids = [
    ...of.results.map(({ person }) => person),
    ...of.assignments.map(({ person }) => person),
    ...[...of.records, ...of.apart].flatMap(({ row, person }) => [row.scout, person]),
    ...of.apart.map(({ resolvedBy }) => resolvedBy),
    ...of.choices.map(({ person }) => person),
    ...of.drills.map(({ startedBy }) => startedBy),
    ...of.plans.map(({ person }) => person),
    ...of.selection.map(({ person }) => person),
  ]
  return new Set(ids.filter((id) => id !== null))
}
