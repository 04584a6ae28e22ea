import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { ValueCell } from '../../charts/cell.ts'
import { percentCell, secondsCell } from '../../charts/cells.ts'
import { units } from '../../units/quantities.ts'
import { unitsShown } from '../../units/system.ts'
import { inputWords } from '../../words/inputs.ts'
import { practiceOf } from '../../words/practice.ts'

/** A value of an unknown in a table: in words, and with all its digits in the unit of those words. */
export function inputCell(
  input: Input,
  value: number,
  documents: { game: Game; options: readonly Option[] },
): ValueCell {
  const { say, measure, quantity } = inputWords(input, documents)
  const shown = say(value)
  if (measure === 'probability') return percentCell(value, shown)
  if (measure === 'seconds') return secondsCell(value, shown)
  if (measure === 'days') return { shown, value: practiceOf(input)?.days(value) ?? null, unit: 'd' }
  if (!quantity) return { shown, value }
  const { factor, symbol } = units[unitsShown()][quantity]
  return { shown, value: value / factor, unit: symbol }
}
