import type { EventContents, KeptRecord } from '../../event/archive/types.ts'
import { alliances, type Row } from '../types.ts'
import { cellsOf } from './document.ts'
import { eventTables } from './eventTables.ts'
import { listTables, recordTables } from './recordTables.ts'
import type { FilledTable, Table } from './types.ts'

type NumberedRecord = KeptRecord & { arrival: number }

const filled = (table: Table, documents: readonly object[]): FilledTable => ({
  table,
  rows: documents.map((document) => cellsOf(table.fields, document)),
})

const bodiesOf = <Kind extends Row['kind']>(records: readonly NumberedRecord[], kind: Kind) =>
  records.flatMap((record) =>
    record.row.kind === kind ? [{ ...record, row: record.row as Extract<Row, { kind: Kind }> }] : [],
  )

const entriesOf = (counts: { readonly [goal: string]: number } = {}): { goal: string; pieces: number }[] =>
  Object.entries(counts).map(([goal, pieces]) => ({ goal, pieces }))

/** An event as tables: what is in force of its document, schedule and results, and all records. `photos` false leaves those out. */
export function tablesOf(contents: EventContents, { photos = true }: { photos?: boolean } = {}): FilledTable[] {
  const event = contents.event.at(-1)!.body
  const records = contents.records.map((record, index) => ({ ...record, arrival: index + 1 }))
  const kinds = ['ranking', 'change', ...(photos ? (['photo'] as const) : []), 'drill', 'withdrawal'] as const
  return [
    filled(eventTables.event, [event]),
    filled(eventTables.teams, event.teams),
    filled(eventTables.people, contents.people),
    filled(eventTables.matches, slotsIn(contents)),
    filled(eventTables.drivers, event.drivers ?? []),
    ...resultTables(contents),
    ...observationTables(records),
    ...visitTables(records),
    ...kinds.map((kind) => filled(recordTables[kind], bodiesOf(records, kind))),
  ]
}

const slotsIn = ({ matches }: EventContents): object[] =>
  matches.flatMap(({ match, removed }) =>
    alliances.flatMap((alliance) =>
      match[alliance].map((slot, index) => ({ match, removed, alliance, slot, place: index + 1 })),
    ),
  )

function resultTables({ results }: EventContents): FilledTable[] {
  const newest = [...new Map(results.map((each) => [each.match, each])).values()]
  const sides = newest.flatMap(({ match, result, enteredAt, person }) =>
    result === null
      ? []
      : alliances.map((alliance) => ({ match, alliance, side: result[alliance], enteredAt, person })),
  )
  return [
    filled(
      eventTables.results,
      sides.map((each) => ({ ...each, pieceGoals: each.side.pieces && Object.keys(each.side.pieces).length })),
    ),
    filled(
      eventTables.resultPieces,
      sides.flatMap(({ match, alliance, side }) =>
        entriesOf(side.pieces).map((entry) => ({ match, alliance, ...entry })),
      ),
    ),
  ]
}

function observationTables(records: readonly NumberedRecord[]): FilledTable[] {
  const all = bodiesOf(records, 'observation')
  const items = (list: 'timeline' | 'counts') =>
    all.flatMap(({ row: { id, body } }) =>
      (body[list] ?? []).map((item, index) => ({ of: id, order: index + 1, item })),
    )
  return [
    filled(
      recordTables.observation,
      all.map((each) => {
        const { timeline, counts } = each.row.body
        return { ...each, happenings: timeline?.length, counts: counts?.length }
      }),
    ),
    filled(listTables.happenings, items('timeline')),
    filled(listTables.counts, items('counts')),
  ]
}

function visitTables(records: readonly NumberedRecord[]): FilledTable[] {
  const all = bodiesOf(records, 'visit')
  return [
    filled(
      recordTables.visit,
      all.map((each) => {
        const { goals } = each.row.body.claims
        return { ...each, goals: goals && Object.keys(goals).length }
      }),
    ),
    filled(
      listTables.visitGoals,
      all.flatMap(({ row: { id, body } }) => entriesOf(body.claims.goals).map((entry) => ({ of: id, ...entry }))),
    ),
  ]
}
