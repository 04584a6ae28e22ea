import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { checkGame } from '../../../src/model/documents/index.ts'
import { withObstacle, withPlace, withSpot, withStart } from '../../../web/screens/games/field/additions.ts'
import { placeLists } from '../../../web/screens/games/field/things.ts'
import { firstGame } from '../../../web/screens/games/firstGame.ts'
import { withoutFinish, withoutGoal, withoutPiece } from '../../../web/screens/games/forms/references.ts'
import { faultIn, pathWords } from '../../../web/screens/games/jsonText.ts'

describe('what is removed', () => {
  test('is named nowhere any more: a goal in sets, bonuses and tie-breakers', () => {
    const { game: next, others } = withoutGoal(game, 'gantry')
    expect(others).toEqual(['String of moorings', 'Harbour moored'])
    expect(checkGame(next)).toEqual([])
    expect(next.sets[0]!.needs).toEqual({ piers: 3 })
    expect(JSON.stringify(next)).not.toContain('"gantry"')
  })

  test('is named nowhere any more: a finish in a bonus', () => {
    const bonus = { ...game.bonuses[2]!, metric: { kind: 'finished' as const, finishes: ['davit', 'dry-dock'] } }
    const { game: next, others } = withoutFinish({ ...game, bonuses: [bonus] }, 'davit')
    expect(others).toEqual(['All berthed'])
    expect(next.bonuses[0]!.metric).toEqual({ kind: 'finished', finishes: ['dry-dock'] })
    expect(checkGame(next)).toEqual([])
  })

  test('a kind of piece that a source still gives is said, not guessed', () => {
    const two = { ...game, pieces: [...game.pieces, { id: 'net', name: 'Net' }] }
    const { game: next } = withoutPiece(two, 'buoy')
    expect(next.goals.every(({ accepts }) => accepts.length === 0)).toBe(true)
    expect(checkGame(next).map(({ message }) => message)).toContain('There is no piece with the id “buoy”')
  })
})

test('what is added to a game fits: places, spots, starts and obstacles, each with an id of its own', () => {
  let now = firstGame('new', 'New', 'Crate')
  expect(checkGame(now)).toEqual([])
  for (const list of placeLists) for (let count = 0; count < 3; count++) now = withPlace(now, list).game
  for (let count = 0; count < 4; count++) now = withSpot(now, 'goals', 1).game
  for (let count = 0; count < 3; count++) now = withStart(now).game
  for (const shape of ['box', 'triangle'] as const) now = withObstacle(now, shape).game
  expect(checkGame(now)).toEqual([])
  expect(now.goals[1]!.spots).toHaveLength(5)
  // Each obstacle has brought its partner.
  expect(now.field.obstacles).toHaveLength(4)
})

describe('a text that is no JSON', () => {
  test.each([
    ['{\n "a": 1,\n "b": x\n}', { line: 3, column: 7 }],
    ['{"a": 1,}', { line: 1, column: 9 }],
    ['[1, 2', { line: 1, column: 6 }],
    ['{"a": "no end}', { line: 1, column: 7 }],
    ['[01]', { line: 1, column: 3 }],
    ['', { line: 1, column: 1 }],
    ['{} {}', { line: 1, column: 4 }],
  ])('%j is answered with where it goes wrong', (text, at) => {
    expect(() => JSON.parse(text)).toThrow()
    expect(faultIn(text)).toEqual(at)
  })

  test('is found exactly where the language’s own reader finds it none', () => {
    const written = fc.oneof(
      fc.json(),
      fc.tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '}', '"', '\\', '1')).map(([json, at, sign]) => {
        const cut = at % (json.length + 1)
        return json.slice(0, cut) + sign + json.slice(cut + 1)
      }),
    )
    fc.assert(
      fc.property(written, (text) => {
        let reads = true
        try {
          JSON.parse(text)
        } catch {
          reads = false
        }
        expect(faultIn(text) === null).toBe(reads)
      }),
      { numRuns: 2000 },
    )
  })

  test('a path is counted as people count', () => {
    expect(pathWords(['goals', 0, 'award', 'teleop'], 'the whole text')).toBe('goals › 1 › award › teleop')
    expect(pathWords([], 'the whole text')).toBe('the whole text')
  })
})
