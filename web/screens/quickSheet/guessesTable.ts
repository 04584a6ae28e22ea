import type { Guess } from '../../../src/model/sheet/index.ts'
import { nameFrom, type TableData } from '../../tables/table.ts'
import { words } from '../../words/catalogue.ts'

/** The guesses of a closed round as a table: by size, as they are shown, so that the order says nothing about whose they are. */
export function guessesTable(title: string, guesses: readonly Guess[]): TableData {
  const { number, low, likely, high } = words().quickSheet.rounds.columns
  const seconds = { type: 'number', unit: 's' } as const
  return {
    name: nameFrom(title),
    title,
    columns: [
      { name: 'number', title: number, type: 'integer' },
      { name: 'low', title: low, ...seconds },
      { name: 'likely', title: likely, ...seconds },
      { name: 'high', title: high, ...seconds },
    ],
    rows: guesses.map((guess, index) => [index + 1, guess.low, guess.likely, guess.high]),
  }
}
