import type { OptionRecord } from '../src/model/documents/records.ts'
import type { FinishMode, Role } from '../src/model/documents/types.ts'

interface Way {
  design: string
  name: string
  start: string
  auto: string
  role: Role
}

const sources = ['outer', 'channel']

const ways: { way: Way; always: number }[] = [
  {
    way: {
      design: 'shearwater',
      name: 'Shearwater',
      start: 'quay-middle',
      auto: 'gantry-two',
      role: { sources, goals: ['piers', 'gantry', 'lightship'], finishes: ['dry-dock', 'davit'], defend: null },
    },
    always: 20,
  },
  {
    way: {
      design: 'kittiwake',
      name: 'Kittiwake',
      start: 'quay-middle',
      auto: 'gantry-two',
      role: { sources, goals: ['piers', 'gantry', 'lightship'], finishes: ['dry-dock'], defend: null },
    },
    always: 6,
  },
  {
    way: {
      design: 'puffin',
      name: 'Puffin',
      start: 'quay-south',
      auto: 'pier-three',
      role: { sources, goals: ['piers', 'lightship'], finishes: ['dry-dock'], defend: null },
    },
    always: 6,
  },
]

const record = (way: Way, suffix: string, words: string, finish: FinishMode): OptionRecord => ({
  format: 1,
  game: 'breakwater',
  design: way.design,
  option: {
    format: 1,
    id: `${way.design}-${suffix}`,
    name: `${way.name}, ${words}`,
    start: way.start,
    auto: way.auto,
    role: way.role,
    finish,
    holdSeconds: { lightship: 5 },
    adjust: [],
  },
})

/** Every design three ways: finishing when it pays, never, and at one called time. */
export const options: OptionRecord[] = ways.flatMap(({ way, always }) => [
  record(way, 'best', 'finish when it pays', { mode: 'best' }),
  record(way, 'skip', 'play to the buzzer', { mode: 'skip' }),
  record(way, 'always', `leave at ${always} s`, { mode: 'always', at: always }),
])
