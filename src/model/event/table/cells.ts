import type { Phase } from '../../scouting/types.ts'
import { type MatchName, matchKey } from '../order.ts'
import type { Columns } from './columns.ts'

/** What is wrong in a cell: `column` as our files name it. */
export type CellFault =
  | { column: string; fault: 'missing' }
  /** `got`: the other line; with the same contents, or with others. */
  | { column: string; fault: 'again' | 'differently'; got: string }
  | { column: string; fault: 'noNumber' | 'noTeam' | 'noPhase' | 'noTime' | 'notPlaying' | 'unknownBonus'; got: string }

/** A line of a table: what it says, or what is wrong with it. */
export type ReadLine<Of> = { line: number } & ({ read: Of } | { faults: CellFault[] })

/** Reads the cells of one line, and collects what is wrong with them. */
export class Cells {
  readonly faults: CellFault[] = []
  private readonly cells: readonly string[]
  private readonly columns: Columns

  constructor(cells: readonly string[], columns: Columns) {
    this.cells = cells
    this.columns = columns
  }

  text(column: string): string {
    const place = this.columns[column]
    return place === undefined ? '' : (this.cells[place] ?? '').trim()
  }

  /** A whole number from `least` on; `otherwise` where the cell is empty. */
  whole<Otherwise extends number | null>(column: string, least: number, otherwise: Otherwise): number | Otherwise {
    const text = this.text(column)
    if (text === '') {
      if (otherwise === null) this.faults.push({ column, fault: 'missing' })
      return otherwise
    }
    // A spreadsheet may have written 'Qualification 12' or 'Q12' in the column of numbers.
    const digits = /^(?:\p{L}\D{0,20})?(\d{1,6})$/u.exec(text)?.[1]
    const number = Number(digits)
    if (digits !== undefined && number >= least) return number
    this.faults.push({ column, fault: 'noNumber', got: text })
    return otherwise
  }

  /** Points, or undefined where the cell is empty. */
  points(column: string): number | undefined {
    const text = this.text(column)
    if (text === '') return undefined
    const number = Number(text.replace('\u2212', '-').replace(',', '.'))
    if (/^[-\u2212]?\d{1,4}([.,]\d+)?$/.test(text)) return number
    this.faults.push({ column, fault: 'noNumber', got: text })
    return undefined
  }

  team(column: string): string {
    const text = this.text(column).toUpperCase()
    if (/^[A-Z0-9-]{1,12}$/.test(text)) return text
    this.faults.push(text === '' ? { column, fault: 'missing' } : { column, fault: 'noTeam', got: text })
    return ''
  }

  /** Names that stand in one cell, separated by spaces, commas or semicolons. */
  names(column: string): string[] {
    return this.text(column)
      .split(/[\s,;/]+/)
      .filter((name) => name !== '')
  }

  phase(otherwise: Phase): Phase {
    const text = this.text('phase').toLowerCase()
    if (text === '') return otherwise
    const known = phaseWords.find(([pattern]) => pattern.test(text))
    if (known) return known[1]
    this.faults.push({ column: 'phase', fault: 'noPhase', got: text })
    return otherwise
  }
}

const phaseWords: readonly (readonly [RegExp, Phase])[] = [
  [/^(p|practice|training|probe.*)$/, 'practice'],
  [/^(q|quali|qualification|qualifikation)$/, 'qualification'],
  [/^(playoffs?|play-offs?|finals?|finale|endrunde)$/, 'playoff'],
]

/** The lines of a table that hold something, counted as a spreadsheet counts them: the headings are line 1. */
export const filledLines = (rows: readonly (readonly string[])[]): { line: number; cells: readonly string[] }[] =>
  rows
    .map((cells, index) => ({ line: index + 2, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''))

/** A match that is told twice alike is taken once; where two lines tell it differently, neither is. */
export function toldOnce<Of extends MatchName>(lines: readonly ReadLine<Of>[]): ReadLine<Of>[] {
  const told = new Map<string, { line: number; read: Of }[]>()
  for (const each of lines)
    if ('read' in each) told.set(matchKey(each.read), [...(told.get(matchKey(each.read)) ?? []), each])
  return lines.map((each) => {
    if (!('read' in each)) return each
    const all = told.get(matchKey(each.read))!
    const other = all.find(({ read }) => JSON.stringify(read) !== JSON.stringify(each.read))
    const fault = (fault: 'again' | 'differently', { line }: { line: number }) => ({
      line: each.line,
      faults: [{ column: 'number', fault, got: String(line) }],
    })
    if (other) return fault('differently', other)
    return all[0]!.line === each.line ? each : fault('again', all[0]!)
  })
}
