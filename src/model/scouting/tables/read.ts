import type { Path, Problem } from '../../errors.ts'
import { alliances } from '../types.ts'
import { documentOf, fieldAt } from './document.ts'
import { eventTables } from './eventTables.ts'
import { problemAt, readLines } from './lines.ts'
import { readRecords } from './readRecords.ts'
import type { Line, Table } from './types.ts'

/** What was read: parts of an event's contents that no contract has looked at yet. */
export interface ReadTables {
  /** Null where there are problems. */
  contents: { event: object; people: object[]; matches: object[]; results: object[]; records: object[] } | null
  problems: Problem[]
  /** Where in the file stands what is at a path of the contents: table, line and column. */
  locate(path: Path): Path
}

/** Cells of a table's file, the heading among them; null: there is no such file. */
export type CellsIn = (table: Table) => readonly (readonly string[])[] | null

/** Where one item of the contents came from. */
export interface Origin {
  table: Table
  line: number
  /** Of the rest of the path: where it stands, if not in this line. */
  inner?(path: Path): Path | undefined
  /** Keys that stand before the paths of the table's fields. */
  before?: readonly string[]
}

/** The event, schedule, results and records of tables; an item with problems is left out and told. */
export function readTables(cellsIn: CellsIn, { at }: { at: string }): ReadTables {
  const problems: Problem[] = []
  const linesOf = (table: Table): Line[] => {
    const cells = cellsIn(table)
    if (cells === null) return []
    const read = readLines(table, cells)
    problems.push(...read.problems)
    return read.lines
  }
  const teams = linesOf(eventTables.teams)
  const people = linesOf(eventTables.people)
  const event = linesOf(eventTables.event)
  const drivers = linesOf(eventTables.drivers)
  const matches = readMatches(linesOf(eventTables.matches), at)
  const results = readResults(linesOf(eventTables.results), linesOf(eventTables.resultPieces), at)
  const id = String(event[0]?.values['id'] ?? '')
  const records = readRecords(linesOf, { event: id, at })
  if (event.length !== 1) problems.push(problemAt(['event', 1], { code: 'oneEvent', parts: {} }))
  problems.push(...matches.problems, ...results.problems, ...records.problems)
  const origins: { readonly [part: string]: readonly Origin[] } = {
    event: event.map(({ line }) => ({
      table: eventTables.event,
      line,
      inner: placeIn({ teams, drivers }),
      before: ['body'],
    })),
    people: people.map(({ line }) => ({ table: eventTables.people, line })),
    matches: matches.origins,
    results: results.origins,
    records: records.origins,
  }
  const body = {
    format: 1,
    ...(event[0] && documentOf(eventTables.event.fields, event[0])),
    teams: teams.map((line) => documentOf(eventTables.teams.fields, line)),
    ...(drivers.length > 0 && { drivers: drivers.map((line) => documentOf(eventTables.drivers.fields, line)) }),
  }
  const contents = {
    event: body,
    people: people.map((line) => documentOf(eventTables.people.fields, line)),
    matches: matches.items,
    results: results.items,
    records: records.items,
  }
  return { contents: problems.length > 0 ? null : contents, problems, locate: (path) => locate(origins, path) }
}

function locate(origins: { readonly [part: string]: readonly Origin[] }, path: Path): Path {
  const [part, index, ...rest] = path
  const origin = origins[String(part)]?.[Number(index)]
  if (!origin) return path
  const { table, line, inner, before = [] } = origin
  const elsewhere = inner?.(rest)
  if (elsewhere) return elsewhere
  const own = before.every((key, place) => rest[place] === key) ? rest.slice(before.length) : rest
  const field = fieldAt(table.fields, own)
  return field ? [table.name, line, field.name] : [table.name, line]
}

/** Of a path in the event's body: the line of a team, or of who drove. */
const placeIn =
  (lines: { readonly teams: readonly Line[]; readonly drivers: readonly Line[] }) =>
  ([body, list, index, key]: Path): Path | undefined =>
    body === 'body' && (list === 'teams' || list === 'drivers') && typeof index === 'number'
      ? [eventTables[list].name, lines[list][index]?.line ?? 1, ...(key === undefined ? [] : [String(key)])]
      : undefined

export interface ReadPart {
  items: object[]
  origins: Origin[]
  problems: Problem[]
}

/** Lines by what stands in a field, in the order in which that comes. */
export function groupsOf(lines: readonly Line[], ...fields: string[]): Map<string, Line[]> {
  const groups = new Map<string, Line[]>()
  for (const each of lines) {
    const key = fields.map((field) => String(each.values[field])).join(' ')
    const group = groups.get(key)
    if (group) group.push(each)
    else groups.set(key, [each])
  }
  return groups
}

const ofMatch = ['phase', 'number', 'play', 'voids', 'time', 'removed'] as const

function readMatches(lines: readonly Line[], at: string): ReadPart {
  const { name, fields } = eventTables.matches
  const problems: Problem[] = []
  const items: object[] = []
  const origins: Origin[] = []
  for (const group of groupsOf(lines, 'match').values()) {
    const [first] = group as [Line, ...Line[]]
    for (const { line, values } of group) {
      const column = ofMatch.find((field) => values[field] !== first.values[field])
      if (column) problems.push(problemAt([name, line, column], { code: 'matchLinesDiffer', parts: { column } }))
    }
    const sides = alliances.map((alliance) => {
      const side = [1, 2, 3].map((place) =>
        group.filter(({ values }) => values['alliance'] === alliance && values['place'] === place),
      )
      if (side.some((found) => found.length !== 1))
        problems.push(problemAt([name, first.line, 'place'], { code: 'notThreeEach', parts: { alliance } }))
      return [alliance, side.map(([found]) => found)] as const
    })
    if (group.length > 6)
      problems.push(problemAt([name, group[6]!.line, 'alliance'], { code: 'notThreeEach', parts: { alliance: 'red' } }))
    const { match, removed } = documentOf(fields, first) as { match: object; removed: boolean }
    const slots = sides.map(([alliance, side]) => [alliance, side.map((line) => line && slotOf(line))])
    items.push({ match: { ...match, ...Object.fromEntries(slots) }, removed, revision: 1, changedAt: at })
    origins.push({ table: eventTables.matches, line: first.line, inner: slotPlace(new Map(sides)) })
  }
  return { items, origins, problems }
}

const slotOf = (line: Line): unknown => (documentOf(eventTables.matches.fields, line) as { slot: object }).slot

const slotPlace =
  (sides: ReadonlyMap<string, readonly (Line | undefined)[]>) =>
  ([, side, index, key]: Path): Path | undefined => {
    const line = typeof index === 'number' ? sides.get(String(side))?.[index]?.line : undefined
    if (line === undefined) return undefined
    return [eventTables.matches.name, line, ...(key === undefined ? [] : [String(key)])]
  }

function readResults(lines: readonly Line[], pieces: readonly Line[], at: string): ReadPart {
  const { name, fields } = eventTables.results
  const ofSide = groupsOf(pieces, 'match', 'alliance')
  const problems: Problem[] = []
  const items: object[] = []
  const origins: Origin[] = []
  const known = new Set(lines.map(({ values }) => `${values['match']} ${values['alliance']}`))
  for (const { line, values } of pieces) {
    const id = `${values['match']} ${values['alliance']}`
    if (!known.has(id))
      problems.push(problemAt(['result_pieces', line, 'match'], { code: 'nothingOfIt', parts: { table: name, id } }))
  }
  for (const [match, group] of groupsOf(lines, 'match')) {
    const [first] = group as [Line, ...Line[]]
    const sides = alliances.map((alliance) => group.filter(({ values }) => values['alliance'] === alliance))
    if (group.length !== 2 || sides.some((side) => side.length !== 1)) {
      problems.push(problemAt([name, first.line, 'alliance'], { code: 'oneSide', parts: {} }))
      continue
    }
    const { enteredAt = at, person = null } = documentOf(fields, first)
    const told = alliances.map((alliance, index) => {
      const [line] = sides[index] as [Line]
      const own = ofSide.get(`${match} ${alliance}`) ?? []
      const wanted = line.values['piece_goals'] ?? null
      if ((wanted ?? 0) !== own.length) {
        const parts = { table: 'result_pieces', got: own.length, wanted: Number(wanted ?? 0) }
        problems.push(problemAt([name, line.line, 'piece_goals'], { code: 'otherCount', parts }))
      }
      const { side } = documentOf(fields, line) as { side: object }
      const counted = Object.fromEntries(own.map(({ values }) => [String(values['goal']), values['pieces']]))
      return [alliance, { ...side, ...(wanted !== null && { pieces: counted }) }]
    })
    items.push({ match, revision: 1, enteredAt, person, result: { match, ...Object.fromEntries(told) } })
    origins.push({ table: eventTables.results, line: first.line, inner: sidePlace(sides.flat()) })
  }
  return { items, origins, problems }
}

const sidePlace =
  (lines: readonly Line[]) =>
  ([, side, ...rest]: Path): Path | undefined => {
    const index = (alliances as readonly unknown[]).indexOf(side)
    const field = index < 0 ? undefined : fieldAt(eventTables.results.fields, ['side', ...rest])
    return field && [eventTables.results.name, lines[index]!.line, field.name]
  }
