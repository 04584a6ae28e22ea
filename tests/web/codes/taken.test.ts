import 'fake-indexeddb/auto'
import { afterAll, describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { isShownPack, type StandsPack, takenPack, withoutGame } from '../../../web/codes/standsPack.ts'
import { applyPack } from '../../../web/stands/codes/applyPack.ts'
import { openDatabase, recall } from '../../../web/stands/data/database.ts'
import { freshVisit, readClaims, type TypedVisit } from '../../../web/stands/pit/claims.ts'
import { ranked } from '../../../web/stands/pit/order.ts'

const pack = (minute: number, more: Partial<StandsPack> = {}): StandsPack => ({
  event: { format: 1, id: 'harbour', name: 'Harbour trial', game: game.id, teams: [] },
  game: { revision: 2, body: game },
  matches: [],
  assignments: [],
  people: [],
  serverTime: `2026-11-27T10:${String(minute).padStart(2, '0')}:00.000Z`,
  mark: `mark ${minute}`,
  ...more,
})

describe('a pack from the lead’s screen', () => {
  test('is taken when the phone has none, or an older one', () => {
    expect(takenPack(pack(1), null)).toEqual({ pack: pack(1) })
    expect(takenPack(pack(2), pack(1))).toEqual({ pack: pack(2) })
  })

  test('is not taken when the phone has it, or a newer one', () => {
    expect(takenPack(pack(1), pack(1))).toEqual({ not: 'same' })
    // The server was asked later and nothing had changed.
    expect(takenPack(pack(1), pack(2, { mark: 'mark 1' }))).toEqual({ not: 'same' })
    expect(takenPack(pack(1), pack(2))).toEqual({ not: 'older' })
  })

  test('without the game needs a phone that has this revision', () => {
    const next = withoutGame(pack(2))
    expect(isShownPack(JSON.parse(JSON.stringify(next)))).toBe(true)
    expect(takenPack(next, pack(1))).toEqual({ pack: pack(2) })
    expect(takenPack(next, null)).toEqual({ not: 'needsGame' })
    expect(takenPack(next, pack(1, { game: { revision: 1, body: game } }))).toEqual({ not: 'needsGame' })
    expect(isShownPack({ ...next, matches: undefined })).toBe(false)
  })
})

describe('a phone', () => {
  const database = openDatabase('taken')
  afterAll(() => database.delete())

  test('keeps the pack with the moment of the server, and looks at its event from then on', async () => {
    expect(await applyPack(database, withoutGame(pack(1)))).toEqual({ not: 'needsGame' })
    expect(await applyPack(database, pack(1))).toEqual({ pack: pack(1) })
    expect(await database.packs.get('harbour')).toMatchObject({ pack: pack(1), asked: Date.parse(pack(1).serverTime) })
    expect(await recall(database, 'event')).toBe('harbour')
    // The game is still there from another event, or an older pack.
    await database.packs.clear()
    expect(await applyPack(database, withoutGame(pack(3)))).toEqual({ pack: pack(3) })
  })
})

describe('what a team claims', () => {
  const read = (typed: Partial<TypedVisit>) => readClaims({ ...freshVisit, ...typed })

  test('is what was typed and nothing else', () => {
    expect(read({})).toEqual({ claims: {} })
    expect(
      read({
        goals: { piers: '12', gantry: ' ' },
        cycle: '7,5',
        routines: 'two buoys, , leave',
        mass: '0',
        note: ' loud ',
      }),
    ).toEqual({ claims: { goals: { piers: 12 }, cycle: 7.5, routines: ['two buoys', 'leave'], mass: 0 }, note: 'loud' })
  })

  test.each<[Partial<TypedVisit>, { [field: string]: object }]>([
    [{ goals: { piers: 'fast' } }, { 'goal piers': { kind: 'notANumber', got: 'fast' } }],
    [{ cycle: '0' }, { cycle: { kind: 'notANumber', got: '0' } }],
    [{ mass: '1001' }, { mass: { kind: 'tooMuch', most: 1000 } }],
    [{ cycle: '-3' }, { cycle: { kind: 'notANumber', got: '-3' } }],
  ])('%j says what is wrong at its field', (typed, problems) => {
    expect(read(typed)).toEqual({ problems })
  })
})

test('of three robots the last follows from the first two, and none is taken twice', () => {
  const all = ['a', 'b', 'c']
  expect(ranked([], 'b', all)).toEqual(['b'])
  expect(ranked(['b'], 'b', all)).toEqual(['b'])
  expect(ranked(['b'], 'a', all)).toEqual(['b', 'a', 'c'])
  expect(ranked(['b', 'a', 'c'], 'a', all)).toEqual(['b', 'a', 'c'])
  expect(ranked([], 'd', all)).toEqual([])
})
