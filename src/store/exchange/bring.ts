import { setImmediate as breath } from 'node:timers/promises'
import type { Game } from '../../model/documents/types.ts'
import {
  apartKey,
  type BringReport,
  type EventContents,
  type Here,
  type KeptRecord,
  planBring,
} from '../../model/event/archive/index.ts'
import { cellsOf } from '../../model/scouting/index.ts'
import { audit } from '../event/audit.ts'
import type { Scope } from '../event/schedule.ts'
import type { By } from '../event/types.ts'
import { forecastRow } from '../forecasts/rows.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { planRow } from '../plans/rows.ts'
import { lineRow } from '../selection/rows.ts'
import type { StoreHealth } from '../types.ts'
import { readContents } from './contents.ts'
import { insertRecords, type KeptCells } from './insert.ts'
import { nicknames, withIds } from './people.ts'
import type { BroughtFile } from './types.ts'
import { withoutForgotten } from './withoutForgotten.ts'

interface As {
  preview: boolean
  by: By
  kind: 'archive' | 'tables'
  now: Date
  engine: StoreHealth['engine']
}

/** Within one transaction: looks at what is here, and writes what the file has besides. */
export async function bringEvent(
  transaction: TransactionClient,
  workspaceId: string,
  file: BroughtFile,
  { preview, by, kind, now, engine }: As,
): Promise<BringReport> {
  const { contents, texts } = await withoutForgotten(transaction, workspaceId, file)
  const event = contents.event.at(-1)!.body.id
  const scope = { workspaceId, event }
  const here = await readHere(transaction, scope, contents)
  await breath()
  const { take, report } = planBring(contents, here)
  if (preview) return report
  await breath()
  await bringDocuments(transaction, scope, { take, now })
  await breath()
  await bringSchedule(transaction, scope, take)
  await bringRecords(transaction, scope, { take, texts, engine })
  const added = report.parts.filter((part) => part.added > 0).map((part) => [part.part, part.added] as const)
  if (added.length === 0 && report.conflicts.length === 0 && !report.back) return report
  const detail = { ...Object.fromEntries(added), conflicts: report.conflicts.length, differs: report.differs.length }
  const action = `exchange.${kind}.bring`
  await audit(transaction, { workspaceId, at: now, by, action, subject: event, detail })
  return report
}

async function readHere(client: TransactionClient, scope: Scope, file: EventContents): Promise<Here> {
  const { workspaceId } = scope
  const ids = new Set([...file.records, ...file.apart].map(({ row }) => row.id))
  const select = { id: true, hash: true } as const
  const held = await withIds(ids, (id) => client.fieldRecord.findMany({ where: { workspaceId, id }, select }))
  const apart = await withIds(ids, (id) => client.quarantinedRecord.findMany({ where: { workspaceId, id }, select }))
  const game = file.rules.at(-1)?.body.id
  const rules =
    game === undefined
      ? []
      : await client.revision.findMany({ where: { workspaceId, kind: 'game', id: game }, orderBy: { revision: 'asc' } })
  return {
    // What is here of records is known by their hashes.
    contents: await readContents(client, scope, { records: false }),
    removed:
      (await client.document.count({ where: { workspaceId, kind: 'event', id: scope.event, removed: true } })) > 0,
    rules: rules.map(({ revision, body }) => ({ revision, body: JSON.parse(body) as Game })),
    hashes: new Map(held.map(({ id, hash }) => [id, hash])),
    apart: new Set(apart.map(({ id, hash }) => apartKey({ row: { id } as KeptRecord['row'], hash }))),
    people: await nicknames(client, workspaceId, new Set(file.people.map(({ id }) => id))),
  }
}

/** The event and its game. */
async function bringDocuments(
  transaction: TransactionClient,
  { workspaceId, event }: Scope,
  { take, now }: { take: EventContents; now: Date },
): Promise<void> {
  const documents = [
    { kind: 'game', revisions: take.rules.map((each) => ({ ...each, note: null, savedAt: now })) },
    {
      kind: 'event',
      revisions: take.event.map((each) => ({ ...each, savedAt: new Date(each.savedAt) })),
    },
  ] as const
  for (const { kind, revisions } of documents) {
    const newest = revisions.at(-1)
    if (!newest) continue
    const { id, name } = newest.body
    const key = { workspaceId, kind, id }
    const there = await transaction.document.findUnique({ where: { workspaceId_kind_id: key } })
    const head = { name, revision: newest.revision, savedAt: newest.savedAt }
    if (!there) await transaction.document.create({ data: { ...key, ...head } })
    else if (there.revision < newest.revision)
      await transaction.document.update({ where: { workspaceId_kind_id: key }, data: head })
    await transaction.revision.createMany({
      data: revisions.map(({ revision, body, note, savedAt }) => ({
        ...key,
        ...{ revision, name: body.name, body: JSON.stringify(body), note, savedAt },
      })),
    })
  }
  const where = { workspaceId, kind: 'event', id: event, removed: true }
  await transaction.document.updateMany({ where, data: { removed: false } })
}

async function bringSchedule(transaction: TransactionClient, scope: Scope, take: EventContents): Promise<void> {
  const { workspaceId } = scope
  await transaction.scheduledMatch.createMany({
    data: take.matches.map(({ match, revision, changedAt, removed }) => {
      const { id, phase, number, play } = match
      const row = { id, phase, number, play, body: JSON.stringify(match), revision, removed }
      return { ...scope, ...row, changedAt: new Date(changedAt) }
    }),
  })
  await breath()
  await transaction.officialResult.createMany({
    data: take.results.map(({ match, revision, enteredAt, person, result }) => {
      const body = result === null ? null : JSON.stringify(result)
      return { ...scope, match, revision, body, enteredAt: new Date(enteredAt), person }
    }),
  })
  await breath()
  await transaction.seatAssignment.createMany({
    data: take.assignments.map(({ match, seat, person, since }) => {
      return { ...scope, match, alliance: seat.alliance, position: seat.position, person, since: new Date(since) }
    }),
  })
  await breath()
  await transaction.recordChoice.createMany({
    data: take.choices.map((choice) => ({ ...scope, ...choice, chosenAt: new Date(choice.chosenAt) })),
  })
  await transaction.drill.createMany({
    data: take.drills.map(({ id, startedAt, endedAt, startedBy }) => {
      const ended = endedAt === null ? null : new Date(endedAt)
      return { ...scope, id, startedAt: new Date(startedAt), endedAt: ended, startedBy }
    }),
  })
  await breath()
  await transaction.forecast.createMany({ data: take.forecasts.map((each) => forecastRow(scope, each)) })
  await breath()
  await transaction.agreedPlan.createMany({ data: take.plans.map((each) => planRow(scope, each)) })
  await transaction.selectionLine.createMany({ data: take.selection.map((each) => lineRow(scope, each)) })
  await transaction.namedPerson.createMany({ data: take.people.map((each) => ({ workspaceId, ...each })) })
}

/** Rows of one statement at most, and letters: it is one text for the engine, and nobody is answered while it works. */
const [mostRows, mostLetters] = [100, 400_000]

async function bringRecords(
  transaction: TransactionClient,
  scope: Scope,
  { take, texts, engine }: { take: EventContents } & Pick<BroughtFile, 'texts'> & Pick<As, 'engine'>,
): Promise<void> {
  let waiting: KeptCells[] = []
  let letters = 0
  const write = async () => {
    if (waiting.length > 0) await insertRecords(transaction, engine, { workspaceId: scope.workspaceId, rows: waiting })
    waiting = []
    letters = 0
    await breath()
  }
  for (const { row, hash, receivedAt, replaces, person } of take.records) {
    const text = texts.get(hash)!
    waiting.push({ cells: cellsOf({ row, text, hash }, replaces), receivedAt: new Date(receivedAt), person })
    letters += text.length
    if (waiting.length >= mostRows || letters >= mostLetters) await write()
  }
  await write()
  await transaction.quarantinedRecord.createMany({
    data: take.apart.map(({ row, hash, receivedAt, resolvedAt, ...rest }) => ({
      ...scope,
      ...rest,
      ...{ id: row.id, device: row.device, hash, body: texts.get(hash)! },
      receivedAt: new Date(receivedAt),
      resolvedAt: resolvedAt === null ? null : new Date(resolvedAt),
    })),
  })
}
