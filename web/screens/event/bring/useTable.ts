import { useState } from 'react'
import { findHeadings, matchColumns } from '../../../../src/model/event/table/columns.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { csvRecords } from '../../../tables/csv.ts'
import { unescapeText } from '../../../tables/formula.ts'
import { words } from '../../../words/catalogue.ts'
import { tableText } from './tableText.ts'

/** Letters of a table at most: some thousand lines. */
const largest = 1_000_000

export interface Table {
  headings: string[]
  rows: string[][]
}

/** Which heading holds which of our columns. */
export type Chosen = { [column: string]: number }

/** A pasted table or a file on its way in: what is typed stays as it is, until it is taken away. `key` names it. */
export function useTable(known: readonly string[], key: string) {
  const { typed: text, type, forget } = useTyped(key, '')
  const [table, setTable] = useState<Table | null>(null)
  const [columns, setColumns] = useState<Chosen>({})
  const [trouble, setTrouble] = useState<string | null>(null)
  const take = (next: string) => {
    if (next === '') forget()
    else type(next)
    setTable(null)
    setTrouble(null)
  }
  const read = async (given: string) => {
    const texts = words().event.bring
    setTrouble(null)
    setTable(null)
    try {
      if (given.trim() === '') throw new Error(texts.empty)
      if (given.length > largest) throw new Error(texts.tooLarge)
      const { line, delimiter } = findHeadings(given, known)
      const records = await csvRecords(given, delimiter)
      const at = line ?? records.findIndex((row) => row.some((cell) => cell.trim() !== ''))
      const headings = (records[at] ?? []).map((cell) => unescapeText(cell).trim())
      // Empty lines stand for what is above the headings, so that lines count as they do in the file.
      const above = Array.from({ length: at }, () => [])
      setTable({ headings, rows: [...above, ...records.slice(at + 1).map((row) => row.map(unescapeText))] })
      setColumns(matchColumns(headings, known))
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const readFile = async (file: File) => {
    const texts = words().event.bring
    try {
      if (file.size > largest) throw new Error(texts.tooLarge)
      const next = tableText(await file.arrayBuffer())
      take(next)
      await read(next)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const choose = (column: string, place: number | null) =>
    setColumns(({ [column]: _, ...others }) => (place === null ? others : { ...others, [column]: place }))
  return { text, take, read, readFile, table, columns, choose, trouble, setTrouble }
}
