import type { Input } from '../../src/model/compare/types.ts'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { valueAt } from '../data/place.ts'
import { placeName } from './actions.ts'
import { words as texts } from './catalogue.ts'
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
}

const pointerParts = (pointer: string): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))

const words: { [key: string]: string } = {
  topSpeed: 'top speed',
  acceleration: 'acceleration',
  deceleration: 'braking',
  pace: 'pace of driving',
  spread: 'spread of form',
  success: 'success',
  points: 'points',
  retry: 'time of a retry',
  absent: 'chance of not playing',
  stops: 'chance of stopping',
  whole: 'time of the leg',
  duration: 'time',
  leaves: 'chance of leaving the start',
}

interface Documents {
  game: Game
  options: readonly Option[]
}

/** Names what a pointer points at, without its option: 'success at Davit', 'Aim at Gantry'. */
function thing(parts: string[], documents: Documents): string {
  const { game } = documents
  if (parts[0] === 'game') {
    const member = valueAt(documents, parts.slice(0, 3)) as { name?: string } | undefined
    const last = words[parts.at(-1)!] ?? parts.at(-1)!
    return member?.name ? `${last} of ${member.name}` : last
  }
  const rest = parts[2] === 'robot' ? parts.slice(3) : parts.slice(2)
  const [group, place] = rest
  const stageAt = parts.indexOf('stages')
  if ((group === 'collect' || group === 'score' || group === 'finish') && place) {
    const where = placeName(game, place)
    const stage =
      stageAt > 0 ? (valueAt(documents, parts.slice(0, stageAt + 2)) as { name?: string } | undefined) : undefined
    if (stage?.name) return `${stage.name} (${where})`
    const what = words[parts.at(-1)!] ?? words[rest[rest.length - 2] ?? ''] ?? parts.at(-1)!
    return what === 'success' ? `success at ${where}` : `${what}, ${where}`
  }
  if (group === 'holdSeconds' && place) return `seconds held at ${placeName(game, place)}`
  if (group === 'adjust') return String(valueAt(documents, [...parts.slice(0, 4), 'label']) ?? 'adjustment')
  return words[parts.at(-1)!] ?? words[group ?? ''] ?? rest.join(' ')
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

/** An input in the team's words, with how its values are written. */
export function inputWords(input: Input, documents: Documents): InputWords {
  const all = input.paths.map(pointerParts)
  const first = all[0] ?? ['']
  const measure = measureOf(input, first)
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
      about: texts().practice.about(things.size > 2 ? practiceName(input.id) : owned, plain(practice.perDay * 100)),
      say: (value) => texts().practice.days(plain(practice.days(value), 1)),
      measure: 'days',
    }
  const signed = (text: string, value: number) => (input.as === 'add' && value > 0 ? `+${text}` : text)
  const say = (value: number): string => {
    if (measure === 'probability') return percent(value)
    if (measure === 'factor') return `× ${plain(value, 2)}`
    if (measure === 'seconds') return signed(seconds(value), value)
    if (measure === 'points') return signed(points(value), value)
    return signed(plain(value, 2), value)
  }
  return { name: /[A-Z ]/.test(input.id) ? input.id : owned, about: owned, say, measure }
}
