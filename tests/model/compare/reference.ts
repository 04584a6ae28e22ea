import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'

const read = (name: string) => JSON.parse(readFileSync(join(import.meta.dirname, '../../reference', name), 'utf8'))

const reference = read('reference-breakwater.json') as { game: Game; options: Option[] }

/** Game and options of the reference case, fresh copies with each call. */
export function documentsOf(...ids: string[]): { game: Game; options: Option[] } {
  const { game, options } = structuredClone(reference)
  return { game, options: ids.map((id) => options.find((option) => option.id === id) as Option) }
}

interface CompareRow {
  options: string[]
  beats?: { [id: string]: { [other: string]: number } }
  input?: Input
  crossings?: { value: number; from: string; to: string }[]
}

export const compareRows = (read('reference-breakwater.expected.json') as { compare: CompareRow[] }).compare
