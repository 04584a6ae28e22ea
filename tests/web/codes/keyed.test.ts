import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { row as rowContract } from '../../../src/api/contracts/scouting/index.ts'
import type { Match, Slot } from '../../../src/model/scouting/index.ts'
import { type KeyedHead, keyedRow, readKeyed, robotOf, type Typed } from '../../../web/screens/event/handin/keyed.ts'
import { sheetFields } from '../../../web/screens/event/sheets/fields.ts'

const slot = (team: string): Slot => ({ team, counts: true, state: 'expected' })
const match = (id: string, number: number, play = 1): Match => ({
  id,
  phase: 'qualification',
  number,
  play,
  red: [slot('90001'), slot('90002'), slot('90003')],
  blue: [slot('90004'), slot('90005B'), slot('90006')],
})
const matches = [match('q12', 12), match('q12b', 12, 2), match('q13', 13)]
const fields = sheetFields(game)
const read = (head: Partial<KeyedHead>, typed: Typed) =>
  readKeyed({ fields, game, matches }, { phase: 'qualification', match: '12', robot: '5', ...head }, typed)

describe('a keyed sheet', () => {
  test('has the boxes of the game in the order of the match, each once', () => {
    const keys = fields.map(({ key }) => key)
    expect(new Set(keys).size).toBe(keys.length)
    expect(keys.slice(0, 4)).toEqual(['absent', 'left', 'auto.piers.scored', 'auto.piers.missed'])
    expect(keys.slice(-6)).toEqual(['finish.attempted', 'finish.achieved', 'lost', 'foul.minor', 'foul.major', 'note'])
    // Three goals in two periods, scored and missed.
    expect(fields.filter(({ kind }) => kind === 'count')).toHaveLength(12)
  })

  test('becomes a record of the last play, with zeros for empty boxes', () => {
    const typed = {
      left: '1',
      'teleop.piers.scored': '14',
      'teleop.piers.missed': '2',
      'finish.achieved': '1',
      note: ' fast ',
    }
    const found = read({}, typed)
    if (!('keyed' in found)) throw new Error(JSON.stringify(found))
    const way = { id: '0192f3a4-7c1e-7abc-8def-0123456789ab', event: 'harbour', device: 'laptop', sequence: 3 }
    const row = keyedRow(found.keyed, { ...way, scout: 'heron', made: '2026-11-27T10:00:00.000Z', game: 2 })
    expect(rowContract.parse(row)).toEqual(row)
    expect(row).toMatchObject({ seat: { alliance: 'blue', position: 2 }, sequence: 3 })
    expect(row.body).toMatchObject({
      match: 'q12b',
      team: '90005B',
      identifiedBy: 'position',
      origin: 'live',
      leftStart: true,
      finish: { attempted: null, achieved: game.finishes[0]!.id },
      fouls: { minor: 0, major: 0 },
      lostSeconds: 0,
      note: 'fast',
    })
    expect('counts' in row.body && row.body.counts).toEqual([
      { goal: 'piers', period: 'auto', scored: 0, missed: 0 },
      { goal: 'gantry', period: 'auto', scored: 0, missed: 0 },
      { goal: 'lightship', period: 'auto', scored: 0, missed: 0 },
      { goal: 'piers', period: 'teleop', scored: 14, missed: 2 },
      { goal: 'gantry', period: 'teleop', scored: 0, missed: 0 },
      { goal: 'lightship', period: 'teleop', scored: 0, missed: 0 },
    ])
  })

  test('of a robot that did not play says nothing else', () => {
    const found = read({}, { absent: '1', 'teleop.piers.scored': '3' })
    expect('keyed' in found && found.keyed.body).toEqual({ absent: true })
  })

  test.each<[string, Partial<KeyedHead>, Typed, { [key: string]: string }]>([
    ['no match', { match: '' }, {}, { match: 'needed' }],
    ['a match that is not there', { match: '99' }, {}, { match: 'noMatch' }],
    ['a match of another phase', { phase: 'playoff' }, {}, { match: 'noMatch' }],
    ['a team that does not play', { robot: '90007' }, {}, { robot: 'noTeam' }],
    ['a word for a number', {}, { 'auto.piers.scored': 'two' }, { 'auto.piers.scored': 'notWhole' }],
    ['too much', {}, { 'foul.major': '101' }, { 'foul.major': 'tooMany' }],
    ['neither yes nor no', {}, { left: '2' }, { left: 'yesOrNo' }],
    ['a finish that is not there', {}, { 'finish.attempted': '9' }, { 'finish.attempted': 'noSuchFinish' }],
  ])('with %s says so at its field', (_, head, typed, problems) => {
    expect(read(head, typed)).toEqual({ problems })
  })

  test('names a robot by its number or by its place, red first', () => {
    expect(robotOf(matches[0]!, '90005b')).toMatchObject({ team: '90005B', identifiedBy: 'number' })
    expect(robotOf(matches[0]!, '3')).toMatchObject({ team: '90003', seat: { alliance: 'red', position: 3 } })
    expect(robotOf(matches[0]!, '7')).toBeNull()
  })
})
