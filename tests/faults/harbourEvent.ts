import type { EventRecord, Match, Observation, Row, Slot } from '../../src/model/scouting/index.ts'
import { harbour } from '../model/documents/harbour.ts'

export const eventId = 'open-water'

/** Teams 90001 to 90024. */
export const teams = Array.from({ length: 24 }, (_, index) => String(90_001 + index))

export const event: EventRecord = {
  format: 1,
  id: eventId,
  name: 'Open Water',
  game: harbour().id,
  teams: teams.map((team) => ({ team })),
}

const slot = (index: number): Slot => ({ team: teams[index % teams.length]!, counts: true, state: 'expected' })

/** Qualification `number`, by which teams take turns. */
export function qualification(number: number): Match {
  const first = (number - 1) * 6
  const at = (offset: number) => slot(first + offset)
  return {
    id: `q${number}`,
    phase: 'qualification',
    number,
    play: 1,
    red: [at(0), at(1), at(2)],
    blue: [at(3), at(4), at(5)],
  }
}

/** A UUID of version 7 made of numbers, so that the same numbers give the same one. */
export function uuidOf(device: number, sequence: number): string {
  const hex = (value: number, digits: number) => value.toString(16).padStart(digits, '0')
  return `0192f3a4-${hex(sequence >> 12, 4)}-7${hex(sequence & 0xfff, 3)}-8${hex(device >> 12, 3)}-${hex(device & 0xfff, 12)}`
}

/** What a scout saw in one match: four trips and a finish, about 1.3 kB. */
export function seen(device: number, sequence: number, change: Partial<Observation> = {}): Row {
  const { scout = `scout-${device}`, match = `q${1 + (sequence % 60)}` } = change
  const body: Observation = {
    format: 1,
    id: uuidOf(device, sequence),
    match,
    team: teams[(device + sequence) % teams.length]!,
    subject: 'robot',
    origin: 'live',
    scout,
    device: `phone-${device}`,
    sequence,
    game: 1,
    identifiedBy: 'number',
    leftStart: true,
    timeline: [0, 1, 2, 3].flatMap((trip) => [
      { elapsed: 21.4 + 24 * trip, what: 'collected' as const, source: 'slip' },
      { elapsed: 29.8 + 24 * trip, what: 'scored' as const, goal: 'pier' },
      { elapsed: 30.9 + 24 * trip, what: 'scored' as const, goal: 'pier' },
    ]),
    finish: { attempted: 'davit', achieved: sequence % 3 === 0 ? null : 'davit' },
    fouls: { minor: 0, major: 0 },
    ...change,
  }
  const { id } = body
  const { device: on } = body
  return {
    id,
    kind: 'observation',
    event: eventId,
    device: on,
    sequence,
    scout,
    made: '2026-11-27T10:00:00.000Z',
    body,
  }
}
