import type { ExchangeSaid } from '../../event/archive/sentences.ts'
import { escapeText, unescapeText } from './formula.ts'
import type { CellType, CellValue } from './types.ts'

/** An empty text would look like nothing: it is written as an apostrophe, and one of apostrophes alone with one more. */
const apostrophes = /^'*$/

const writeText = (text: string): string => (apostrophes.test(text) ? `'${text}` : escapeText(text))
const readText = (cell: string): string => (apostrophes.test(cell) ? cell.slice(1) : unescapeText(cell))

/** What stands in the file: nothing for null, numbers as ECMAScript writes them, lists as JSON. */
export function writeCell(value: CellValue): string {
  if (value === null) return ''
  if (typeof value === 'string') return writeText(value)
  return typeof value === 'object' ? JSON.stringify(value) : String(value)
}

const numeral = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i

/** The value of a cell, or what is wrong with it. */
export function readCell(cell: string, type: CellType): { value: CellValue } | ExchangeSaid {
  if (cell === '') return { value: null }
  const parts = { got: cell.slice(0, 60) }
  switch (type) {
    case 'string':
      return { value: readText(cell) }
    case 'boolean': {
      const small = cell.toLowerCase()
      return small === 'true' || small === 'false' ? { value: small === 'true' } : { code: 'cellNoBoolean', parts }
    }
    case 'array': {
      const value = listIn(cell)
      return value ? { value } : { code: 'cellNoList', parts }
    }
    default: {
      const value = numeral.test(cell) ? Number(cell) : Number.NaN
      if (!Number.isFinite(value)) return { code: 'cellNoNumber', parts }
      return type === 'integer' && !Number.isInteger(value) ? { code: 'cellNoWhole', parts } : { value }
    }
  }
}

function listIn(cell: string): string[] | null {
  try {
    const value: unknown = JSON.parse(cell)
    return Array.isArray(value) && value.every((each) => typeof each === 'string') ? value : null
  } catch {
    return null
  }
}
