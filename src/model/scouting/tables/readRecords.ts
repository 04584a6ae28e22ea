import type { Path, Problem } from '../../errors.ts'
import { type RecordKind, recordKinds } from '../types.ts'
import { documentOf, fieldAt } from './document.ts'
import { problemAt } from './lines.ts'
import type { Origin, ReadPart } from './read.ts'
import { groupsOf } from './read.ts'
import { listTables, recordTables } from './recordTables.ts'
import type { Line, Table } from './types.ts'

type Body = { [field: string]: unknown }

interface Read {
  row: { [field: string]: unknown; body?: Body }
  arrival?: number
  [field: string]: unknown
}

/** A list within records: its table, which field counts its lines, and where it stands in a body. */
const lists = [
  { table: listTables.happenings, count: 'happenings', key: 'timeline', of: 'observation' },
  { table: listTables.counts, count: 'counts', key: 'counts', of: 'observation' },
] as const

/** All records of the tables, in the order in which they arrived. */
export function readRecords(linesOf: (table: Table) => Line[], { event, at }: { event: string; at: string }): ReadPart {
  const problems: Problem[] = []
  const found: { item: Read; origin: Origin; arrival: number }[] = []
  const inner = new InnerLines(linesOf, problems)
  for (const kind of recordKinds) {
    const table: Table = recordTables[kind]
    const lines = linesOf(table)
    const ids = new Set(lines.map(({ values }) => String(values['id'])))
    inner.checkOwners(kind, table, ids)
    for (const line of lines) {
      const item = documentOf(table.fields, line) as unknown as Read
      const { arrival = Number.POSITIVE_INFINITY, receivedAt = at, person = null, replaces = null } = item
      const row = { ...item.row, kind, event }
      const body = { ...bodyOf(kind, row), ...inner.of(kind, line) }
      found.push({
        item: { row: { ...row, body }, receivedAt, person, replaces },
        origin: { table, line: line.line, inner: inner.places(kind, line) },
        arrival,
      })
    }
  }
  found.sort((a, b) => (a.arrival === b.arrival ? 0 : a.arrival - b.arrival))
  return { items: found.map(({ item }) => item), origins: found.map(({ origin }) => origin), problems }
}

/** What a document says again of its row, and what stands in every document of a kind. */
function bodyOf(kind: RecordKind, row: Read['row']): Body {
  const { id, scout, device, sequence, body = {} } = row
  switch (kind) {
    case 'observation':
      return { format: 1, id, scout, device, sequence, ...body }
    case 'photo':
      return { id, ...body }
    case 'ranking':
      return { scout, ...body }
    case 'visit':
      return { claims: {}, ...body }
    default:
      return body
  }
}

/** Lines of other tables that belong into records. */
class InnerLines {
  readonly #problems: Problem[]
  readonly #lines: ReadonlyMap<string, Map<string, Line[]>>
  readonly #goals: Map<string, Line[]>

  constructor(linesOf: (table: Table) => Line[], problems: Problem[]) {
    this.#problems = problems
    this.#lines = new Map(
      lists.map(({ table, of }) => {
        const sorted = linesOf(table).toSorted((a, b) => Number(a.values['order']) - Number(b.values['order']))
        return [table.name, groupsOf(sorted, of)]
      }),
    )
    this.#goals = groupsOf(linesOf(listTables.visitGoals), 'visit')
  }

  /** Tells lines that belong to nothing. */
  checkOwners(kind: RecordKind, { name }: Table, ids: ReadonlySet<string>): void {
    const tables =
      kind === 'observation'
        ? lists.map(({ table, of }) => ({ table: table.name, of: of as string, groups: this.#lines.get(table.name)! }))
        : kind === 'visit'
          ? [{ table: listTables.visitGoals.name, of: 'visit', groups: this.#goals }]
          : []
    for (const { table, of, groups } of tables) {
      for (const [id, lines] of groups) {
        if (ids.has(id)) continue
        const said = { code: 'nothingOfIt' as const, parts: { table: name, id } }
        this.#problems.push(problemAt([table, lines[0]!.line, of], said))
      }
    }
  }

  /** The lists of one record, as its body has them. */
  of(kind: RecordKind, line: Line): Body {
    const id = String(line.values['id'])
    if (kind === 'visit') {
      const goals = this.#goals.get(id) ?? []
      if (!this.#counted(line, { count: 'goals', table: listTables.visitGoals.name, got: goals.length })) return {}
      const { claims = {} } = (documentOf(recordTables.visit.fields, line) as unknown as Read).row.body ?? {}
      const claimed = Object.fromEntries(goals.map(({ values }) => [String(values['goal']), values['pieces']]))
      return { claims: { ...(claims as Body), goals: claimed } }
    }
    if (kind !== 'observation') return {}
    return Object.fromEntries(
      lists.flatMap(({ table, count, key }) => {
        const own = this.#lines.get(table.name)!.get(id) ?? []
        if (!this.#counted(line, { count, table: table.name, got: own.length })) return []
        return [[key, own.map((each) => (documentOf(table.fields, each) as { item: object }).item)]]
      }),
    )
  }

  /** Whether a record has a list at all; tells where it has not so many lines as it says. */
  #counted({ line, values }: Line, of: { count: string; table: string; got: number }): boolean {
    const wanted = values[of.count] ?? null
    if (Number(wanted ?? 0) !== of.got) {
      const name = of.count === 'goals' ? recordTables.visit.name : recordTables.observation.name
      const parts = { table: of.table, got: of.got, wanted: Number(wanted ?? 0) }
      this.#problems.push(problemAt([name, line, of.count], { code: 'otherCount', parts }))
    }
    return wanted !== null
  }

  /** Where in the file an item of a record's list stands. */
  places(kind: RecordKind, line: Line): (path: Path) => Path | undefined {
    return ([row, body, key, index, ...rest]) => {
      const list = lists.find((each) => each.key === key)
      if (kind !== 'observation' || row !== 'row' || body !== 'body' || !list || typeof index !== 'number')
        return undefined
      const found = this.#lines.get(list.table.name)!.get(String(line.values['id']))?.[index]
      if (!found) return undefined
      const field = fieldAt(list.table.fields, ['item', ...rest])
      return [list.table.name, found.line, ...(field ? [field.name] : [])]
    }
  }
}
