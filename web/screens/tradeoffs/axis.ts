import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { plain } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { practiceOf } from '../../words/practice.ts'

/** An input as an axis: days of practice are drawn as days, everything else as its value. */
export interface InputAxis {
  name: string
  at(value: number): number
  back(position: number): number
  /** A mark of the axis. */
  tick(position: number): string
  /** The value there in words, with its unit. */
  say(position: number): string
  low: number
  high: number
  likely: number
}

export function inputAxis(input: Input, documents: { game: Game; options: readonly Option[] }): InputAxis {
  const { name, say } = inputWords(input, documents)
  const practice = practiceOf(input)
  const at = (value: number) => practice?.days(value) ?? value
  const [low, high] = [at(input.low), at(input.high)].sort((a, b) => a - b) as [number, number]
  const back = (position: number) => practice?.value(position) ?? position
  return {
    name,
    at,
    back,
    say: (position) => say(back(position)),
    tick: (position) => (practice ? plain(position, 1) : say(position)),
    low,
    high,
    likely: at(input.likely),
  }
}
