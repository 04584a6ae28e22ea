import { game } from '../../../seed/game.ts'
import type { Happening, Row } from '../../../src/model/scouting/index.ts'

const uuid = (what: number, number: number): string =>
  `0192f3a4-${what.toString(16).padStart(4, '0')}-7abc-8def-${number.toString(16).padStart(12, '0')}`

const tenth = (value: number): number => Math.round(value * 10) / 10

/** A match of one robot as a scout taps it: every four to five seconds a piece is collected and put somewhere. */
export function taps(trips: number): Happening[] {
  return Array.from({ length: trips }, (_, trip): Happening[] => {
    const at = 3 + trip * 4.3 + (trip % 4) / 10
    const goal = game.goals[trip % 3 === 0 ? 0 : 1]!.id
    const source = game.sources[trip % 2]!.id
    return [
      { elapsed: tenth(at), what: 'collected', source },
      { elapsed: tenth(at + 2.5), what: trip % 5 === 4 ? 'missed' : 'scored', goal, n: 1 },
    ]
  }).flat()
}

/** A finished record of a phone, with ids as they really are: UUIDs, and a team of five digits. */
export function tappedRow(of: { phone: number; sequence: number; trips: number }): Row {
  const { phone, sequence, trips } = of
  const way = { id: uuid(1000 + phone, sequence), device: uuid(2, phone), sequence, scout: uuid(3, phone) }
  return {
    ...way,
    kind: 'observation',
    event: 'harbour',
    made: `2026-11-27T10:${String(sequence).padStart(2, '0')}:00.123Z`,
    seat: { alliance: phone % 2 ? 'red' : 'blue', position: ((phone % 3) + 1) as 1 | 2 | 3 },
    body: {
      ...way,
      format: 1,
      match: uuid(5, sequence),
      team: String(90_001 + phone),
      subject: 'robot',
      origin: 'live',
      game: 1,
      identifiedBy: 'position',
      startSpot: game.starts[0]!.id,
      leftStart: true,
      departedAt: 128.4,
      timeline: taps(trips),
      finish: { attempted: game.finishes[0]!.id, achieved: null },
      fouls: { minor: sequence % 2, major: 0 },
    },
  }
}
