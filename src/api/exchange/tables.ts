import type { Problem } from '../../model/errors.ts'
import type { EventContents } from '../../model/event/archive/index.ts'
import { canonicalJson } from '../../model/scouting/index.ts'
import {
  eventTables,
  listTables,
  packageOf,
  problemAt,
  readTables,
  recordTables,
  tablesOf,
} from '../../model/scouting/tables/index.ts'
import { read } from '../documents/read.ts'
import { hashOf } from '../records/rows.ts'
import type { Context } from '../trpc.ts'
import { cellsIn, writeTable } from './csv.ts'
import { fileName } from './fileName.ts'
import { checkedContents, type FileRead, prepared, refuseFile } from './reading.ts'
import { unzipped, zipped } from './zip.ts'

export interface TablesAsked {
  contents: EventContents
  /** Each table begins with the byte-order mark. */
  mark: boolean
  photos: boolean
  /** ISO 8601. */
  made: string
}

/** An event as tables with their description, in one zip file. */
export function tableFiles({ contents, mark, photos, made }: TablesAsked): { name: string; zip: Uint8Array } {
  const { id, name: title } = contents.event.at(-1)!.body
  const tables = tablesOf(contents, { photos })
  const described = packageOf(
    tables.map(({ table }) => table),
    { id, title, made },
  )
  const files = [
    { name: 'datapackage.json', text: `${JSON.stringify(described, null, 2)}\n` },
    ...tables.map((filled) => ({ name: `${filled.table.name}.csv`, text: writeTable(filled, mark) })),
  ]
  return { name: `${fileName(id)}-tables`, zip: zipped(files) }
}

const all = [eventTables, recordTables, listTables].flatMap((tables) => Object.values(tables))

/** The cells of all tables in a file, by table. */
function cellsOf(file: Uint8Array): Map<string, string[][]> {
  const texts = unzipped(file)
  if ('message' in texts) return refuseAll([texts])
  const cells = new Map<string, string[][]>()
  const problems: Problem[] = []
  for (const table of all) {
    const { name } = table
    const text = texts.get(`${name}.csv`)
    if (text === undefined) continue
    const found = cellsIn(text, table)
    if (found) cells.set(name, found)
    else problems.push(problemAt([name, 1], { code: 'openQuotes', parts: {} }))
  }
  if (!cells.has('event')) problems.push(problemAt(['event', 1], { code: 'noTable', parts: { table: 'event' } }))
  refuseFile(problems)
  return cells
}

function refuseAll(problems: [Problem]): never {
  refuseFile(problems)
  throw problems[0]
}

/** What a file of tables holds, each cell looked at; what is wrong is told by where in it something stands. */
export async function readTablesFile(file: Uint8Array): Promise<FileRead> {
  const cells = cellsOf(file)
  const at = new Date().toISOString()
  const { contents, problems, locate } = readTables(({ name }) => cells.get(name) ?? null, { at })
  refuseFile(problems)
  const { event, records, ...parts } = contents!
  const whole = {
    event: [{ revision: 1, body: event, note: null, savedAt: at }],
    ...parts,
    records: (records as { row: unknown }[]).map((each) => ({ ...each, hash: hashOf(canonicalJson(each.row)) })),
    ...{ rules: [], assignments: [], apart: [], choices: [], drills: [], forecasts: [], plans: [], selection: [] },
  }
  return prepared(await checkedContents(whole, locate), locate)
}

/** Tables hold no game: it must be here, or everything of the event would be about nothing. */
export async function refuseWithoutGame({ workspace }: Context, { event }: EventContents): Promise<void> {
  const { game } = event.at(-1)!.body
  if (await read(workspace, 'game', { id: game })) return
  refuseFile([problemAt(['event', 2, 'game'], { code: 'gameFirst', parts: { game } })])
}
