import type { Match, Phase, Side, Slot } from '../../scouting/types.ts'
import { idOf, type MatchName, matchKey } from '../order.ts'
import { Cells, filledLines, type ReadLine, toldOnce } from './cells.ts'
import type { Columns, ScheduleColumn } from './columns.ts'
import { type Day, readTime } from './time.ts'

/** What a table leaves to be said beside it. */
export interface ScheduleDefaults extends Day {
  /** Of lines without one. */
  phase: Phase
}

/** A match as a table tells it: which it is, and who plays. Its id is found by `placeMatches`. */
export type Told = Omit<Match, 'id' | 'voids'>

/** Reads the lines below a schedule's headings. A line with a fault keeps all of its faults and is no match. */
export function readSchedule(
  rows: readonly (readonly string[])[],
  columns: Columns,
  defaults: ScheduleDefaults,
): ReadLine<Told>[] {
  const lines = filledLines(rows).map(({ line, cells }): ReadLine<Told> => {
    const row = new Cells(cells, columns)
    const phase = row.phase(defaults.phase)
    const number = row.whole('number', 1, null)
    const play = row.whole('play', 1, 1)
    const time = readTime(row, defaults)
    const marks = marksOf(row)
    const red = readSide(row, ['red_1', 'red_2', 'red_3'], marks)
    const blue = readSide(row, ['blue_1', 'blue_2', 'blue_3'], marks)
    checkMarks(row, marks, [...red, ...blue])
    if (row.faults.length > 0 || number === null) return { line, faults: row.faults }
    return { line, read: { phase, number, play, ...(time === null ? {} : { time }), red, blue } }
  })
  return toldOnce(lines)
}

type Marks = { readonly [column in 'surrogates' | 'absent' | 'disqualified']: ReadonlySet<string> }

const marksOf = (row: Cells): Marks => {
  const teams = (column: ScheduleColumn) => new Set(row.names(column).map((name) => name.toUpperCase()))
  return { surrogates: teams('surrogates'), absent: teams('absent'), disqualified: teams('disqualified') }
}

function readSide(row: Cells, columns: readonly [ScheduleColumn, ScheduleColumn, ScheduleColumn], marks: Marks): Side {
  return columns.map((column): Slot => {
    const team = row.team(column)
    const state = marks.disqualified.has(team) ? 'disqualified' : marks.absent.has(team) ? 'absent' : 'expected'
    return { team, counts: !marks.surrogates.has(team), state }
  }) as Side
}

/** Who is marked has to play in the match. */
function checkMarks(row: Cells, marks: Marks, slots: readonly Slot[]): void {
  for (const [column, teams] of Object.entries(marks))
    for (const team of teams)
      if (!slots.some((slot) => slot.team === team)) row.faults.push({ column, fault: 'notPlaying', got: team })
}

/** What a table has no column for stays as the schedule has it. */
const marked = {
  counts: ['surrogates'],
  state: ['absent', 'disqualified'],
} as const

/**
 * Gives the matches of a table their ids: that of the match which has the phase, number and play already, else one made of
 * them. A later play voids the one before it. What the table says nothing of (times, surrogates, states) stays as it is.
 */
export function placeMatches(told: readonly Told[], existing: readonly Match[], columns: Columns): Match[] {
  const known = new Map(existing.map((match) => [matchKey(match), match]))
  const idFor = (match: MatchName) => known.get(matchKey(match))?.id ?? idOf(match)
  const there = new Set([...existing, ...told].map(matchKey))
  const says = (of: keyof typeof marked) => marked[of].some((column) => columns[column] !== undefined)
  return told.map((match) => {
    const before = known.get(matchKey(match))
    const earlier = { ...match, play: match.play - 1 }
    const voids = match.play > 1 && there.has(matchKey(earlier)) ? { voids: idFor(earlier) } : {}
    const time = before?.time !== undefined && columns['time'] === undefined ? { time: before.time } : {}
    const old = new Map([...(before?.red ?? []), ...(before?.blue ?? [])].map((slot) => [slot.team, slot]))
    const kept = (slot: Slot): Slot => ({
      ...slot,
      ...(says('counts') ? {} : { counts: old.get(slot.team)?.counts ?? slot.counts }),
      ...(says('state') ? {} : { state: old.get(slot.team)?.state ?? slot.state }),
    })
    return {
      id: idFor(match),
      ...match,
      ...time,
      ...voids,
      red: match.red.map(kept) as Side,
      blue: match.blue.map(kept) as Side,
    }
  })
}
