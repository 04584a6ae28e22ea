import type { Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { valueAt } from '../data/place.ts'
import type { Quantity } from '../units/quantities.ts'
import { unitsShown } from '../units/system.ts'
import { sayQuantity } from '../units/write.ts'
import { placeName } from './actions.ts'
import { words } from './catalogue.ts'
import { listed, percent, plain, points, seconds } from './format.ts'
import { practiceName, practiceOf } from './practice.ts'

export interface InputWords {
  /** The team's own word: the input's id, or what it points at where the id is not a word. */
  name: string
  /** What it changes: 'Shearwater: success at Davit'. */
  about: string
  /** A value of the input with its unit. */
  say(value: number): string
  measure: 'probability' | 'seconds' | 'factor' | 'points' | 'number' | 'days'
  /** What its values measure, where that has another unit in inch–pound. */
  quantity: Quantity | null
}

const pointerParts = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))

/** The word for a field of a document; null where it has none. */
function fieldWord(key: string | undefined): string | null {
  const { inputs } = words().actions
  return key !== undefined && Object.hasOwn(inputs, key) ? inputs[key as keyof typeof inputs] : null
}

interface Documents {
  game: Game
  options: readonly Option[]
}

/** Names what a pointer points at, without its option: 'success at Davit', 'Aim at Gantry'. */
function thing(parts: string[], documents: Documents): string {
  const { game } = documents
  const texts = words().actions
  if (parts[0] === 'game') {
    const member = valueAt(documents, parts.slice(0, 3)) as { name?: string } | undefined
    const last = fieldWord(parts.at(-1)) ?? parts.at(-1)!
    return member?.name ? texts.inputOf(last, member.name) : last
  }
  const rest = parts[2] === 'robot' ? parts.slice(3) : parts.slice(2)
  const [group, place] = rest
  const stageAt = parts.indexOf('stages')
  if ((group === 'collect' || group === 'score' || group === 'finish') && place) {
    const where = placeName(game, place)
    const stage =
      stageAt > 0 ? (valueAt(documents, parts.slice(0, stageAt + 2)) as { name?: string } | undefined) : undefined
    if (stage?.name) return `${stage.name} (${where})`
    if (parts.at(-1) === 'success') return texts.successAt(where)
    return `${fieldWord(parts.at(-1)) ?? fieldWord(rest.at(-2)) ?? parts.at(-1)!}, ${where}`
  }
  if (group === 'holdSeconds' && place) return texts.heldAt(placeName(game, place))
  if (group === 'adjust') return String(valueAt(documents, [...parts.slice(0, 4), 'label']) ?? texts.adjustment)
  return fieldWord(parts.at(-1)) ?? fieldWord(group) ?? rest.join(' ')
}

function measureOf(input: Input, parts: string[]): InputWords['measure'] {
  if (input.as === 'factor') return 'factor'
  const last = parts.at(-1)!
  if (['success', 'leaves', 'absent', 'stops'].includes(last)) return 'probability'
  if (last === 'points') return 'points'
  if (parts.includes('pace') || last === 'spread') return input.as === 'add' ? 'number' : 'factor'
  if (parts.includes('duration') || parts.includes('whole') || parts.includes('retry') || parts.includes('holdSeconds'))
    return 'seconds'
  return 'number'
}

const quantities: { readonly [field: string]: Quantity } = {
  topSpeed: 'speed',
  acceleration: 'acceleration',
  deceleration: 'acceleration',
  length: 'length',
  width: 'length',
  clearance: 'length',
}

/** What the values of an input measure: nothing where they are factors. */
const quantityOf = (input: Input, parts: string[]): Quantity | null =>
  input.as === 'factor' ? null : (quantities[parts.at(-1) ?? ''] ?? null)

/** An input in the team's words, with how its values are written. */
export function inputWords(input: Input, documents: Documents): InputWords {
  const all = input.paths.map(pointerParts)
  const first = all[0] ?? ['']
  const measure = measureOf(input, first)
  const quantity = quantityOf(input, first)
  const owners = new Set(
    all.filter((parts) => parts[0] === 'options').map((parts) => documents.options[Number(parts[1])]?.robot.name ?? ''),
  )
  const things = new Set(all.map((parts) => thing(parts, documents)))
  const name = [...things].join(', ')
  const owned = owners.size > 0 ? `${listed([...owners])}: ${name}` : name
  const practice = practiceOf(input)
  if (practice)
    return {
      name: practiceName(input.id),
      about: words().practice.about(things.size > 2 ? practiceName(input.id) : owned, plain(practice.perDay * 100)),
      say: (value) => words().practice.days(plain(practice.days(value), 1)),
      measure: 'days',
      quantity: null,
    }
  const signed = (text: string, value: number) => (input.as === 'add' && value > 0 ? `+${text}` : text)
  const say = (value: number): string => {
    if (measure === 'probability') return percent(value)
    if (measure === 'factor') return `× ${plain(value, 2)}`
    if (measure === 'seconds') return signed(seconds(value), value)
    if (measure === 'points') return signed(points(value), value)
    if (quantity) return signed(sayQuantity(value, quantity, unitsShown(), 2), value)
    return signed(plain(value, 2), value)
  }
  return { name: /[\p{Lu} ]/u.test(input.id) ? input.id : owned, about: owned, say, measure, quantity }
}
