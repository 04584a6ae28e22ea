import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { row as rowContract } from '../../../src/api/contracts/scouting/index.ts'
import { CodeError, idTable, noTable, packRow, peekRow, unpackRow } from '../../../src/model/scouting/code/index.ts'
import { sameRow } from '../../../src/model/scouting/code/row.ts'
import { type Happening, happenings, type Observation, type Row } from '../../../src/model/scouting/index.ts'
import { someRow } from './someRow.ts'

const table = idTable(game)

/** A match of one robot as a scout taps it: a trip every four seconds or so. */
function tapped(trips: number): Happening[] {
  return Array.from({ length: trips }, (_, trip): Happening[] => {
    const at = 3 + trip * 4.3
    const to = trip % 3 === 0 ? 'piers' : 'gantry'
    return [
      { elapsed: Math.round(at * 10) / 10, what: 'collected', source: game.sources[0]!.id },
      { elapsed: Math.round((at + 2.5) * 10) / 10, what: trip % 5 === 4 ? 'missed' : 'scored', goal: to, n: 1 },
    ]
  }).flat()
}

/** Ids as they really are: UUIDs, a team of five digits. */
const finished = (timeline: Happening[], more?: Partial<Observation>): Row => {
  const way = {
    id: '0192f3a4-7c1e-7abc-8def-0123456789ab',
    device: '0192f3a4-0000-7abc-8def-0123456789ab',
    sequence: 7,
    scout: '0192f3a4-1111-7abc-8def-0123456789ab',
  }
  return {
    ...way,
    kind: 'observation',
    event: '0192f3a4-2222-7abc-8def-0123456789ab',
    made: '2026-11-27T10:00:00.123Z',
    seat: { alliance: 'red', position: 2 },
    body: {
      ...way,
      format: 1,
      match: '0192f3a4-3333-7abc-8def-0123456789ab',
      team: '90001',
      subject: 'robot',
      origin: 'live',
      game: 3,
      identifiedBy: 'position',
      startSpot: game.starts[0]!.id,
      leftStart: true,
      timeline,
      departedAt: 128.4,
      finish: { attempted: game.finishes[0]!.id, achieved: null },
      fouls: { minor: 1, major: 0 },
      ...more,
    },
  }
}

describe('a record as bytes', () => {
  test('comes back as it was, whatever a record may hold, with the table of the game and without one', () => {
    fc.assert(
      fc.property(someRow(table), fc.boolean(), (row, known) => {
        const ids = known ? table : noTable
        // What the contract reads is what a stands record may hold.
        expect(rowContract.safeParse(row).success).toBe(true)
        const bytes = packRow(row, ids)
        // The long form is for what a body says differently from its row, and for nothing else.
        expect(bytes[0]).toBe(row.id === (row.body as Observation).id ? 0x10 : 0x11)
        const back = unpackRow(bytes, ids)
        if (!sameRow(back, row)) expect(back).toEqual(row)
      }),
      { numRuns: 200 },
    )
  })

  test('takes 3 bytes a tap, and with 50 taps and a finish at most 300', () => {
    const [none, fifty] = [packRow(finished([]), table), packRow(finished(tapped(25)), table)]
    expect(fifty.length - none.length).toBe(150)
    expect(fifty.length).toBeLessThanOrEqual(300)
    // Ids, clock and team alone: five UUIDs, the record's own among them, with a byte before four of them.
    expect(none.length).toBeLessThan(130)
  })

  test('takes 5 bytes for a tap with a place on the field, in tenths of a metre', () => {
    const there = tapped(10).map((tap, index) => ({ ...tap, x: index / 2, y: 4.1 }))
    expect(packRow(finished(there), table).length - packRow(finished([]), table).length).toBe(100)
  })

  test('knows volleys, half seconds and long waits by heart as well as odd times by their digits', () => {
    const odd: Happening[] = [
      { elapsed: 0.5, what: 'scored', goal: 'piers', n: 12, counted: 'estimate' },
      { elapsed: 99.9, what: 'scored', goal: 'piers', n: 40, counted: 'estimate', x: 1.25, y: -3 },
      { elapsed: 100 / 3, what: 'collected', source: 'elsewhere' },
      { elapsed: -0.1, what: 'left' },
    ]
    const row = finished(odd, { note: 'Ⓐ 🐧 …' })
    expect(unpackRow(packRow(row, table), table)).toEqual(row)
  })

  test('keeps a field that this version does not know, in its long form', () => {
    const later = finished([], { mood: 'bold' } as Partial<Observation>)
    expect(unpackRow(packRow(later, table), table)).toEqual(later)
  })

  test('carries visits, rankings, changes and drills too', () => {
    const { body: _, ...way } = finished([])
    const ranking: Row = {
      ...way,
      kind: 'ranking',
      body: { match: 'q1', scout: 's', by: 'driving', order: ['1', '2'] },
    }
    expect(unpackRow(packRow(ranking, table), table)).toEqual(ranking)
    expect(peekRow(packRow(ranking, table))).toBeNull()
  })

  test('says which game it needs before it is read, and is not read by another one’s table', () => {
    const bytes = packRow(finished(tapped(2)), table)
    expect(peekRow(bytes)).toEqual({ event: '0192f3a4-2222-7abc-8def-0123456789ab', game: 3, check: table.check })
    const other = idTable({ ...game, goals: game.goals.slice(1) })
    expect(() => unpackRow(bytes, other)).toThrow('another revision of the game')
  })

  test('of a newer version is said to be newer', () => {
    const bytes = packRow(finished([]), table)
    bytes[0] = bytes[0]! + 16
    expect(() => unpackRow(bytes, table)).toThrow('newer version')
    expect(() => peekRow(bytes)).toThrow('newer version')
  })

  test('that is no record is refused in words, never by a failure of the program', () => {
    const short = packRow(finished(tapped(3)), table)
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 300 }).map((rest) => Uint8Array.from([16, ...rest])),
      fc.uint8Array({ maxLength: 300 }).map((rest) => Uint8Array.from([17, ...rest])),
      fc.nat(short.length - 1).map((length) => short.slice(0, length)),
      fc.tuple(fc.nat(short.length - 1), fc.nat(255)).map(([at, byte]) => short.map((b, i) => (i === at ? byte : b))),
    )
    fc.assert(
      fc.property(bytes, (some) => {
        try {
          unpackRow(some, table)
        } catch (error) {
          expect(error).toBeInstanceOf(CodeError)
        }
      }),
      { numRuns: 500 },
    )
  })

  test('has two numbers of `what` to spare for its other forms', () => {
    expect(happenings.length).toBe(14)
  })
})
