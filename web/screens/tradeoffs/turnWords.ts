import type { Turn } from '../../../src/model/compare/index.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import { type InputWords, inputWords } from '../../words/inputs.ts'
import { practiceOf } from '../../words/practice.ts'
import { isNothing, optionName } from '../../words/verdict.ts'

interface Documents {
  game: Game
  options: Option[]
}

/** A part of an input's range with one best option; null where it is open towards the range's end. */
interface Part {
  best: string
  from: number | null
  to: number | null
}

/** The parts of the range between its crossings, from low to high. */
export function partsOf({ crossings, bestAtLow }: Turn): Part[] {
  const bests = [bestAtLow, ...crossings.map(({ to }) => to)]
  return bests.map((best, index) => ({
    best,
    from: index === 0 ? null : crossings[index - 1]!.value,
    to: crossings[index]?.value ?? null,
  }))
}

function placeWords(part: Part, input: Input, { say }: InputWords): string {
  const texts = words().turns.turn
  // Fewer days less is a larger success.
  const [from, to] = practiceOf(input)?.falls ? [part.to, part.from] : [part.from, part.to]
  if (from !== null && to !== null) return texts.between(say(from), say(to))
  return from !== null ? texts.above(say(from)) : texts.below(say(to!))
}

/**
 * Where one unknown turns the answer, an option a sentence: 'the hang pays as long as it succeeds in more than 62 % of
 * tries; you believe 55 % to 80 %, most likely 70 %.' A number that is no unknown of the trade-off (not `own`) is believed by
 * nobody yet: then the range that was looked at stands there.
 */
export function turnWords(turn: Turn, input: Input, documents: Documents, own = true): string[] {
  const texts = words().turns.turn
  const said = told(input, documents)
  const [low, high] = ends(input)
  const believe = (own ? texts.believe : texts.looked)(said.say(low), said.say(high), said.say(input.likely))
  const name = (id: string) => optionName(documents.options, id)
  if (turn.crossings.length === 0) {
    // Where nothing is left of the lead as it is shown, nothing 'stays the best'.
    const say = isNothing(turn.leastLead) ? texts.level : texts.never
    return [`${say(name(turn.bestAtLow), said.name, said.say(low), said.say(high))}.`]
  }
  const parts = partsOf(turn)
  const bests = [...new Set(parts.map(({ best }) => best))]
  const pays = said.measure === 'probability' ? texts.paysSuccess : texts.pays
  const sentences = bests.map((best, index) => {
    const where = parts.filter((part) => part.best === best).map((part) => placeWords(part, input, said))
    return `${pays(name(best), said.name, where.join(texts.or))}${index === 0 ? `; ${believe}` : ''}.`
  })
  return turn.crossings.some(({ jump }) => jump) ? [...sentences, texts.jump] : sentences
}

/** The input's words, a factor kept on one line. */
function told(input: Input, documents: Documents): InputWords {
  const said = inputWords(input, documents)
  return { ...said, say: (value) => said.say(value).replace('× ', '×\u00a0') }
}

/** The ends of the range in the order in which they are told: fewest days first. */
const ends = (input: Input): [number, number] =>
  practiceOf(input)?.falls ? [input.high, input.low] : [input.low, input.high]

/** An unknown that does not matter, with its range and what lead is left. */
export function idleWords(turn: Turn, input: Input, documents: Documents): string {
  const texts = words().turns.arguments
  const { name, say } = told(input, documents)
  const [low, high] = ends(input)
  return turn.leastLead < 0.1
    ? texts.thin(name, say(low), say(high))
    : texts.lead(name, say(low), say(high), points(turn.leastLead))
}
