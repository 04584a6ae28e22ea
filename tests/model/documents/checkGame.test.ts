import { describe, expect, test } from 'vitest'
import { checkGame, type Game } from '../../../src/model/documents/index.ts'
import { harbour } from './harbour.ts'
import { type Case, expectOne } from './problems.ts'

const cases: Case<Game>[] = [
  [
    'a teleop without length',
    ({ clock }) => Object.assign(clock, { teleop: 0, endgame: 0 }),
    ['clock', 'teleop'],
    /longer than 0 s, got 0/,
  ],
  [
    'an endgame longer than teleop',
    ({ clock }) => Object.assign(clock, { endgame: 60.1 }),
    ['clock', 'endgame'],
    /teleop \(60 s\).*got 60\.1/,
  ],
  ['two goals with one id', ({ goals }) => Object.assign(goals[1]!, { id: 'pier' }), ['goals', 1, 'id'], /“pier”/],
  [
    'a spot with the id of a start',
    ({ goals }) => Object.assign(goals[1]!.spots[0]!, { id: 'left' }),
    ['goals', 1, 'spots', 0, 'id'],
    /two starts or spots with the id “left”/,
  ],
  [
    'two spots with one id at different places',
    ({ finishes }) => Object.assign(finishes[0]!.spots[0]!, { id: 'slip.1' }),
    ['finishes', 0, 'spots', 0, 'id'],
    /“slip\.1”/,
  ],
  [
    'a source of an unknown piece',
    ({ sources }) => Object.assign(sources[0]!, { piece: 'crate' }),
    ['sources', 0, 'piece'],
    /no piece with the id “crate”/,
  ],
  [
    'a goal that accepts an unknown piece',
    ({ goals }) => goals[0]!.accepts.push('crate'),
    ['goals', 0, 'accepts', 1],
    /no piece with the id “crate”/,
  ],
  [
    'a goal that accepts a piece twice',
    ({ goals }) => goals[0]!.accepts.push('buoy'),
    ['goals', 0, 'accepts', 1],
    /“buoy” is named twice/,
  ],
  [
    'a set that needs an unknown goal',
    ({ sets }) => Object.assign(sets[0]!.needs, { crow: 1 }),
    ['sets', 0, 'needs', 'crow'],
    /no goal with the id “crow”/,
  ],
  [
    'a bonus on an unknown finish',
    ({ bonuses }) => Object.assign(bonuses[0]!, { metric: { kind: 'finished', finishes: ['dock', 'quay'] } }),
    ['bonuses', 0, 'metric', 'finishes', 1],
    /no finish with the id “quay”/,
  ],
  [
    'seconds of holding at a goal that pays for each piece',
    ({ bonuses }) => Object.assign(bonuses[0]!, { metric: { kind: 'heldSeconds', goal: 'pier' } }),
    ['bonuses', 0, 'metric', 'goal'],
    /“pier” pays for each piece/,
  ],
  [
    'a bonus without a level',
    ({ bonuses }) => Object.assign(bonuses[0]!, { atLeast: {} }),
    ['bonuses', 0, 'atLeast'],
    /“Busy” has no level/,
  ],
  [
    'a tie-breaker on an unknown goal',
    ({ ranking }) => ranking.then.push({ pieces: ['crow'] }),
    ['ranking', 'then', 2, 'pieces', 0],
    /“crow”/,
  ],
  [
    'a spot outside the field',
    ({ goals }) => Object.assign(goals[1]!.spots[0]!, { at: [12.5, 3] }),
    ['goals', 1, 'spots', 0, 'at'],
    /spot “mast\.1” of “Mast” lies outside the field of 12 m × 6 m, at 12\.5, 3/,
  ],
  [
    'an obstacle that only one alliance sees',
    ({ field }) => field.obstacles.pop(),
    ['field', 'obstacles', 0],
    /“Wall A” lies on no obstacle when the field is turned by half a turn/,
  ],
]

describe('A game is refused, with the field and a sentence, for', () => {
  test.each(cases)('%s', (_what, change, path, words) => {
    const game = harbour()
    change(game)
    expectOne(checkGame(game), path, words)
  })
})

test('A game in which everything fits has no problem', () => {
  expect(checkGame(harbour())).toEqual([])
})

test('A self-crossing outline is named, and not blamed on the symmetry as well', () => {
  const game = harbour()
  const [a, b, c, d] = game.field.obstacles[1]!.outline
  game.field.obstacles[1]!.outline = [a!, c!, b!, d!]
  expectOne(checkGame(game), ['field', 'obstacles', 1, 'outline'], /“Wall B” is no simple one.*cross or touch/)
})

test('What lies on each other when turned does not when mirrored', () => {
  const game = harbour()
  game.field.symmetry = 'mirror'
  const problems = checkGame(game)
  expect(problems.map(({ path }) => path.join('/'))).toEqual(['field/obstacles/0', 'field/obstacles/1'])
  expect(problems[0]!.message).toContain('mirrored')
})

test('All problems are found at once, so that a screen can show each beside its field', () => {
  const game = harbour()
  game.clock.endgame = 90
  game.sources[0]!.piece = 'crate'
  expect(checkGame(game).map(({ path }) => path.join('/'))).toEqual(['clock/endgame', 'sources/0/piece'])
})
