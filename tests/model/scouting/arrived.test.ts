import { expect, test } from 'vitest'
import { type Assignment, arrivals, type Observation, type SeatState } from '../../../src/model/scouting/index.ts'
import { match } from '../event/matches.ts'

// Told in another order than they are played in.
const matches = [match(3, 'A D B', 'E C F'), match(1, 'A B C', 'D E F'), match(2, 'F E D', 'C B A')]

const assigned = (of: string, alliance: 'red' | 'blue', position: 1 | 2 | 3, person: string | null): Assignment => ({
  match: of,
  seat: { alliance, position },
  person,
})
const assignments = [
  assigned('q1', 'red', 1, 'mia'),
  assigned('q1', 'red', 2, 'ben'),
  assigned('q1', 'blue', 1, null),
  assigned('q2', 'red', 1, 'mia'),
  assigned('q3', 'red', 1, 'mia'),
]

const record = (id: string, of: string | null, team: string, subject: Observation['subject'] = 'robot') => ({
  observation: { id, match: of, team, subject } as Observation,
  team,
})

const at = (records: ReturnType<typeof record>[], counted: string[] = []) =>
  arrivals({ matches, assignments, records, counted: new Set(counted) })

const states = (of: ReturnType<typeof at>, id: string): SeatState[] =>
  of.find(({ match: each }) => each === id)!.seats.map(({ state }) => state)

test('Before anything is here, whoever is to watch is expected, and the matches stand in the order of play', () => {
  const found = at([])
  expect(found.map(({ match: id, played }) => [id, played])).toEqual([
    ['q1', false],
    ['q2', false],
    ['q3', false],
  ])
  const free = 'unwatched'
  expect(states(found, 'q1')).toEqual(['expected', 'expected', free, free, free, free])
  expect(found[0]!.seats[0]).toEqual({
    seat: { alliance: 'red', position: 1 },
    team: 'A',
    person: 'mia',
    state: 'expected',
    records: [],
  })
})

test('A match is over when something of it, something of a later one or its result is here; who has not sent is late', () => {
  const free = 'unwatched'
  const late = ['late', 'late', free, free, free, free]
  // By a record of the match itself.
  expect(states(at([record('r1', 'q1', 'A')]), 'q1')).toEqual(['received', 'late', free, free, free, free])
  // By one of a later match: that one is over for who watched it too, and the one after it is still to come.
  const later = at([record('r2', 'q2', 'B')])
  expect(states(later, 'q1')).toEqual(late)
  expect(states(later, 'q2')).toEqual(['late', free, free, free, 'received', free])
  expect(later.map(({ played }) => played)).toEqual([true, true, false])
  // By the officials.
  expect(states(at([], ['q1']), 'q1')).toEqual(late)
  expect(at([], ['q2']).map(({ played }) => played)).toEqual([true, true, false])
})

test('Every record of a robot is named, whoever made it; one of a robot that does not play there, and of a human player, is not', () => {
  const found = at([
    record('r1', 'q1', 'F'),
    record('r2', 'q1', 'F'),
    record('r3', 'q1', 'Z'),
    record('r4', 'q1', 'B', 'human'),
    record('r5', null, 'A'),
  ])
  expect(found[0]!.seats.map(({ records }) => records)).toEqual([[], [], [], [], [], ['r1', 'r2']])
  expect(found[0]!.played).toBe(true)
  // What a human player did does not end a match.
  expect(at([record('r4', 'q1', 'B', 'human'), record('r5', null, 'A')])[0]!.played).toBe(false)
})
