import type { Bonus, Game } from '../../documents/types.ts'
import { type Alliance, alliances, type Match, type Phase, type Result, type ResultSide } from '../../scouting/types.ts'
import { type MatchName, matchKey } from '../order.ts'
import { Cells, filledLines, type ReadLine, toldOnce } from './cells.ts'
import { type Columns, resultColumns } from './columns.ts'

/** What of a game a table of results names. */
export type CountedGame = Pick<Game, 'bonuses' | 'goals'>

/** All columns that a table of a game's results can have. */
export const resultColumnsOf = ({ goals }: CountedGame): string[] => [
  ...resultColumns,
  ...alliances.flatMap((alliance) => goals.map(({ id }) => `${alliance}_pieces_${id}`)),
]

export interface ToldResult extends MatchName {
  red: ResultSide
  blue: ResultSide
}

/** Reads the lines below the headings of a table of results. Bonuses are named by id or name, separated by semicolons. */
export function readResults(
  rows: readonly (readonly string[])[],
  columns: Columns,
  of: { game: CountedGame; phase: Phase },
): ReadLine<ToldResult>[] {
  const lines = filledLines(rows).map(({ line, cells }): ReadLine<ToldResult> => {
    const row = new Cells(cells, columns)
    const phase = row.phase(of.phase)
    const number = row.whole('number', 1, null)
    const play = row.whole('play', 1, 1)
    const [red, blue] = [sideOf(row, 'red', { columns, ...of }), sideOf(row, 'blue', { columns, ...of })]
    if (row.faults.length > 0 || number === null) return { line, faults: row.faults }
    return { line, read: { phase, number, play, red, blue } }
  })
  return toldOnce(lines)
}

function sideOf(row: Cells, alliance: Alliance, of: { game: CountedGame; columns: Columns }): ResultSide {
  const points = (column: string) => row.points(`${alliance}_${column}`)
  if (row.text(`${alliance}_total`) === '') row.faults.push({ column: `${alliance}_total`, fault: 'missing' })
  const parts = {
    autonomous: points('autonomous'),
    goals: points('goals'),
    finishes: points('finishes'),
    fromFouls: points('from_fouls'),
  }
  const pieces = of.game.goals.flatMap(({ id }) => {
    const column = `${alliance}_pieces_${id}`
    return row.text(column) === '' ? [] : [[id, row.whole(column, 0, 0)] as const]
  })
  const bonusColumn = `${alliance}_bonuses`
  return {
    points: { total: points('total') ?? 0, ...without(parts) },
    // A table with the column says of every match which were reached, also where none was.
    ...(of.columns[bonusColumn] === undefined ? {} : { bonuses: bonusesIn(row, bonusColumn, of.game.bonuses) }),
    ...(pieces.length === 0 ? {} : { pieces: Object.fromEntries(pieces) }),
  }
}

const without = <Value>(parts: { [key: string]: Value | undefined }): { [key: string]: Value } =>
  Object.fromEntries(Object.entries(parts).filter((part): part is [string, Value] => part[1] !== undefined))

function bonusesIn(row: Cells, column: string, bonuses: readonly Bonus[]): string[] {
  const text = row.text(column)
  const names = text.includes(';') ? text.split(';').map((name) => name.trim()) : [text]
  return names
    .filter((name) => name !== '' && !/^[-–]$/.test(name))
    .flatMap((name) => {
      const found = bonuses.find((bonus) =>
        [bonus.id, bonus.name].some((each) => each.toLowerCase() === name.toLowerCase()),
      )
      if (found) return [found.id]
      row.faults.push({ column, fault: 'unknownBonus', got: name })
      return []
    })
}

/** The results of a table with the matches that they are of; those of no match are told apart. */
export function placeResults(
  told: readonly ToldResult[],
  matches: readonly Match[],
): { results: Result[]; nowhere: ToldResult[] } {
  const known = new Map(matches.map((match) => [matchKey(match), match.id]))
  const results = told.flatMap(({ red, blue, ...name }) => {
    const match = known.get(matchKey(name))
    return match === undefined ? [] : [{ match, red, blue }]
  })
  return { results, nowhere: told.filter((each) => !known.has(matchKey(each))) }
}
