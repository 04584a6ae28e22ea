import { beforeAll, describe, expect, test } from 'vitest'
import { observation as contract } from '../../../src/api/contracts/scouting/index.ts'
import type { StandsPack } from '../../../web/codes/standsPack.ts'
import { changesOf, rowWith } from '../../../web/screens/event/records/changes.ts'
import { differencesOf } from '../../../web/screens/event/records/differences.ts'
import { factsOf } from '../../../web/screens/event/records/facts.ts'
import { countKey, readTyped, type TypedRecord, typedOf } from '../../../web/screens/event/records/typed.ts'
import { allWords } from '../../../web/words/catalogue.ts'
import { event, qualification, seen, teams } from '../../faults/harbourEvent.ts'
import { harbour } from '../../model/documents/harbour.ts'

const game = harbour()
const matches = [qualification(1), qualification(2)]
const pack: StandsPack = {
  event,
  game: { revision: 1, body: game },
  matches,
  assignments: [],
  people: [{ id: 'scout-1', nickname: 'Kit' }],
  serverTime: '2026-11-27T10:00:00.000Z',
  mark: 'a',
}
type Observed = Extract<ReturnType<typeof seen>, { kind: 'observation' }>
const row = {
  ...(seen(1, 1, { match: 'q1', team: teams[0]! }) as Observed),
  seat: { alliance: 'red', position: 1 },
} as Observed
const goal = game.goals[0]!

const readAs = (of: Observed, change: Partial<TypedRecord> = {}) =>
  readTyped({ ...typedOf(of.body, of.body.team), ...change }, of.body, { game, matches })
function read(of: Observed, change: Partial<TypedRecord> = {}) {
  const found = readAs(of, change)
  if ('problems' in found) throw new Error(JSON.stringify(found.problems))
  return found
}
function corrected(of: Observed, change: Partial<TypedRecord>) {
  const { body, seat } = read(of, change)
  return changesOf(of, body, { team: of.body.team, seat })
}

beforeAll(() => allWords())

describe('A record in the form of its correction', () => {
  test.each([
    ['with taps', row],
    [
      'that was counted',
      {
        ...row,
        body: { ...row.body, timeline: undefined, counts: [{ goal: goal.id, period: 'auto', scored: 2, missed: 0 }] },
      },
    ],
    [
      'that says next to nothing',
      { ...row, body: { ...row.body, timeline: undefined, finish: undefined, fouls: undefined, leftStart: undefined } },
    ],
    [
      'of an absent robot',
      {
        ...row,
        body: {
          ...row.body,
          timeline: undefined,
          finish: undefined,
          fouls: undefined,
          leftStart: undefined,
          absent: true,
        },
      },
    ],
  ])('%s says the same as before when nothing was typed', (_, of) => {
    expect(corrected(JSON.parse(JSON.stringify(of)), {})).toBeNull()
  })

  test('asks for what was changed and nothing else', () => {
    expect(corrected(row, { note: ' bent intake ', achieved: '' })).toEqual({
      changes: { note: 'bent intake', finish: { attempted: row.body.finish!.attempted, achieved: null } },
    })
    const { taps } = typedOf(row.body, teams[0]!)
    const without = corrected(row, { taps: taps!.slice(1) })
    expect(without?.changes.timeline).toEqual(row.body.timeline!.slice(1))
    // A tap that is added stands where its second says, and one that was not touched stays as it was, place included.
    const fresh = { key: 99, at: '22,5', what: 'missed' as const, place: goal.id, n: '2', estimate: true, kept: null }
    const added = corrected(row, { taps: [...taps!, fresh] })
    expect(added?.changes.timeline?.[1]).toEqual({
      elapsed: 22.5,
      what: 'missed',
      goal: goal.id,
      n: 2,
      counted: 'estimate',
    })
    expect(added?.changes.timeline?.toSpliced(1, 1)).toEqual(row.body.timeline)
  })

  test('gives another robot its place, and one that is not in the match no place to be known by', () => {
    expect(corrected(row, { team: teams[4]! })).toEqual({
      changes: { team: teams[4] },
      seat: { alliance: 'blue', position: 2 },
    })
    const byPlace = { ...row, body: { ...row.body, identifiedBy: 'position' as const } }
    expect(corrected(byPlace, { team: teams[20]! })).toEqual({ changes: { team: teams[20], identifiedBy: 'number' } })
    expect(corrected(row, { match: 'q2' })?.changes).toEqual({ match: 'q2' })
  })

  test('of a robot that did not play says nothing else', () => {
    const asked = corrected(row, { absent: true })
    expect(asked?.changes).toEqual({ absent: true })
    expect(asked?.clear).toEqual(['leftStart', 'timeline', 'finish', 'fouls'])
  })

  test('names what can not be read, field by field', () => {
    const { taps } = typedOf(row.body, teams[0]!)
    const found = readAs(row, { minor: '1.5', stopped: '-3', taps: [{ ...taps![0]!, at: 'soon' }] })
    expect('problems' in found && Object.keys(found.problems).sort()).toEqual(['minor', 'stopped', 'tap 0 at'])
    expect('problems' in found && found.problems['minor']).toContain('‘1.5’')
    const counted = { ...row, body: { ...row.body, timeline: undefined, counts: [] } } as unknown as Observed
    const wrong = readAs(counted, { counts: { [countKey(goal.id, 'teleop', 'scored')]: '2000' } })
    expect('problems' in wrong && Object.values(wrong.problems)[0]).toContain('from 0 to 1000')
  })

  test('is one that the contract takes, and taken back is what it was', () => {
    const { body, seat } = read(row, { team: teams[4]!, note: 'other robot', lost: '12', taps: [] })
    const next = rowWith(row, body, seat)
    expect(contract.safeParse(next.body).error).toBeUndefined()
    const back = changesOf(next, row.body, { team: next.body.team, seat: row.seat })
    expect(back).toMatchObject({ clear: ['lostSeconds', 'note'], seat: row.seat })
    expect(back?.changes).toEqual({ team: row.body.team, timeline: row.body.timeline })
  })
})

describe('Two records side by side', () => {
  test('show what differs in words, taps one by one, and count what is the same', () => {
    const other = rowWith(
      row,
      read(row, { note: 'seen', achieved: '', taps: typedOf(row.body, '').taps!.slice(1) }).body,
      undefined,
    )
    const { differ, alike } = differencesOf(factsOf(pack, row), factsOf(pack, other))
    expect(differ.map(({ what, first, later }) => [what, first, later])).toEqual([
      ['Finish reached', expect.any(String), 'none'],
      ['Taps', expect.stringMatching(/^21\.4.s: collected/), null],
      ['Note', null, 'seen'],
    ])
    expect(alike).toBe(factsOf(pack, row).length - 2)
  })

  test('of the same content differ in nothing', () => {
    expect(differencesOf(factsOf(pack, row), factsOf(pack, row)).differ).toEqual([])
  })
})
