import { expect, test } from 'vitest'
import { observation, row } from '../../src/api/contracts/scouting/index.ts'
import type { Observation, Row } from '../../src/model/scouting/index.ts'

const id = '0192f3a4-7c1e-7abc-8def-0123456789ab'

const seen: Observation = {
  format: 1,
  id,
  match: 'q12',
  team: '90001B',
  subject: 'robot',
  origin: 'live',
  scout: 'heron',
  device: 'phone-3',
  sequence: 7,
  game: 1,
  identifiedBy: 'position',
  timeline: [
    { elapsed: 3.2, what: 'collected', source: 'slipway' },
    { elapsed: 9.6, what: 'scored', goal: 'pier', n: 12, counted: 'estimate' },
  ],
  finish: { attempted: 'davit', achieved: null },
}

const sent: Row = {
  id,
  kind: 'observation',
  event: 'harbour',
  device: 'phone-3',
  sequence: 7,
  scout: 'heron',
  made: '2026-11-27T10:00:00.123+01:00',
  seat: { alliance: 'red', position: 2 },
  body: seen,
}

test('an observation and its row are read as they are', () => {
  expect(observation.parse(seen)).toEqual(seen)
  expect(row.parse(sent)).toEqual(sent)
})

test.each([
  ['an id that is no UUID', { ...seen, id: 'Q12' }],
  ['a team with a blank', { ...seen, team: '90 001' }],
  ['a field that does not exist', { ...seen, speed: 3 }],
  ['a happening without a name', { ...seen, timeline: [{ elapsed: 1 }] }],
  ['half a piece', { ...seen, timeline: [{ elapsed: 1, what: 'scored', n: 0.5 }] }],
])('%s is refused', (_, wrong) => {
  expect(observation.safeParse(wrong).success).toBe(false)
  expect(row.safeParse({ ...sent, body: wrong }).success).toBe(false)
})
