import * as fc from 'fast-check'
import type { IdTable } from '../../../src/model/scouting/code/index.ts'
import { type Happening, happenings, type Observation, type Row } from '../../../src/model/scouting/index.ts'

/** Left out as often as not. */
const maybe = { requiredKeys: [] as [] }

const uuid = fc.uuid({ version: [4, 7] })
const id = fc.oneof(uuid, fc.constantFrom('q12', 'harbour', 'phone-3', '12', '007', '0'))
const second = fc.oneof(
  fc.integer({ min: 0, max: 12_000 }).map((tenths) => tenths / 10),
  fc.double({ min: 0, max: 1200, noNaN: true }),
)
const metre = fc.oneof(
  fc.integer({ min: -20, max: 300 }).map((tenths) => tenths / 10),
  fc.double({ min: -100, max: 1000, noNaN: true }),
)
const pieces = fc.nat(1000)
const moment = fc.oneof(
  fc
    .date({ min: new Date('1970-01-01'), max: new Date('2200-01-01'), noInvalidDate: true })
    .map((at) => at.toISOString()),
  fc.constantFrom(
    '2026-11-27T10:00:00+01:00',
    '2026-11-27T10:00Z',
    '2026-13-31T25:00:00.000Z',
    '2024-02-29T00:00:00.000Z',
  ),
)

function happening(table: IdTable): fc.Arbitrary<Happening> {
  const goals = fc.constantFrom('elsewhere', ...table.places.flatMap(({ goal }) => goal ?? []))
  const sources = fc.constantFrom('elsewhere', ...table.places.flatMap(({ source }) => source ?? []))
  return fc
    .tuple(
      fc.record({ elapsed: second, what: fc.constantFrom(...happenings) }),
      fc.record(
        {
          goal: goals,
          source: sources,
          n: fc.oneof(fc.integer({ min: 0, max: 20 }), pieces),
          counted: fc.constantFrom('each' as const, 'estimate' as const),
          x: metre,
          y: metre,
        },
        maybe,
      ),
    )
    .map(([must, may]) => ({ ...must, ...may }))
}

/** A row with an observation, as the contract allows it: of a live record and of the strangest one. */
export function someRow(table: IdTable): fc.Arbitrary<Row> {
  const known = fc.oneof(fc.constantFrom('elsewhere', ...table.ids), id)
  const body: fc.Arbitrary<Partial<Observation>> = fc.record(
    {
      replaces: uuid,
      absent: fc.boolean(),
      startSpot: known,
      leftStart: fc.boolean(),
      routine: known,
      driver: id,
      robotRevision: fc.integer({ min: 1, max: 1_000_000_000 }),
      departedAt: second,
      timeline: fc.array(happening(table), { maxLength: 40 }),
      counts: fc.array(
        fc.record({
          goal: known,
          period: fc.constantFrom('auto' as const, 'teleop' as const),
          scored: pieces,
          missed: pieces,
        }),
        { maxLength: 6 },
      ),
      finish: fc.record({ attempted: fc.option(known), achieved: fc.option(known) }),
      defence: fc.record({
        playedSeconds: second,
        received: fc.constantFrom('none' as const, 'some' as const, 'heavy' as const),
      }),
      lostSeconds: second,
      stoppedAt: second,
      fouls: fc.record({ minor: fc.nat(100), major: fc.nat(100) }),
      note: fc.string({ unit: 'binary', maxLength: 200 }),
    },
    maybe,
  )
  const way = fc.record({ id: uuid, device: id, sequence: fc.nat(1_000_000_000), scout: id })
  const must = fc.record({
    match: fc.option(id),
    team: fc.constantFrom('90001', '90001B', '7', '007', 'A-1'),
    subject: fc.constantFrom('robot' as const, 'human' as const),
    origin: fc.constantFrom('live' as const, 'video' as const, 'practice' as const),
    game: fc.integer({ min: 1, max: 1_000_000_000 }),
    identifiedBy: fc.constantFrom('number' as const, 'position' as const),
  })
  const around = fc.tuple(
    fc.record({ event: id, made: moment }),
    fc.record(
      {
        seat: fc.record({
          alliance: fc.constantFrom('red' as const, 'blue' as const),
          position: fc.constantFrom(1 as const, 2 as const, 3 as const),
        }),
        reason: fc.string({ maxLength: 60 }),
      },
      maybe,
    ),
  )
  // Now and then the body says another id than its row, which the contract allows.
  const other = fc.oneof({ weight: 9, arbitrary: fc.constant({}) }, { weight: 1, arbitrary: fc.record({ id: uuid }) })
  return fc.tuple(way, around, must, body, other).map(([own, [there, optional], always, fields, differs]) => ({
    ...own,
    kind: 'observation',
    ...there,
    ...optional,
    body: { ...own, format: 1, ...always, ...fields, ...differs },
  }))
}
