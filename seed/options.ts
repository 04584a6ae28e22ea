import type { OptionRecord } from '../src/model/documents/records.ts'
import type { FinishMode, Role } from '../src/model/documents/types.ts'

interface Way {
  design: string
  name: string
  start: string
  auto: string
  role: Role
  /** A robot that brings several buoys at once buys less with each: the lead is held already. */
  holdSeconds: number
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
      holdSeconds: 5,
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
      holdSeconds: 5,
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
      holdSeconds: 3,
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
    holdSeconds: { lightship: way.holdSeconds },
    adjust: [],
  },
})

/** Every design three ways: finishing when it pays, never, and at one called time. */
export const options: OptionRecord[] = ways.flatMap(({ way, always }) => [
  record(way, 'best', 'finish when it pays', { mode: 'best' }),
  record(way, 'skip', 'play to the buzzer', { mode: 'skip' }),
  record(way, 'always', `leave at ${always} s`, { mode: 'always', at: always }),
])
