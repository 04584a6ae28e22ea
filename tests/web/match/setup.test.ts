import { describe, expect, test } from 'vitest'
import {
  firstSetup,
  fromSearch,
  isComplete,
  type MatchSetup,
  toSearch,
  withKnown,
} from '../../../web/screens/match/setup.ts'
import { withHoldSeconds } from '../../../web/screens/match/TakeOver.tsx'

const setup: MatchSetup = {
  ours: ['a-best', null, 'a-best'],
  theirs: ['b&c=d', 'c', 'd'],
  level: 'final',
  replicates: 2000,
  precision: 0.0125,
  seed: 12,
  other: { ours: ['a-best', 'b', null], theirs: ['c', 'd', 'e'] },
  lineup: {
    objective: 'rankingPoints',
    choices: [
      {
        of: 'a-best',
        settled: false,
        goals: ['pier', 'a;b,c&d%e'],
        finishes: [],
        marks: ['nobody', '2'],
        from: '12,5',
        until: 'later',
      },
      null,
      { of: 'a-best', settled: true, goals: [], finishes: ['dock'], marks: [], from: '', until: '30' },
    ],
    weight: '0,5',
    further: [{ slots: ['c', null, 'x,y'], weight: 'often' }],
  },
}

describe('the set-up of a match in the address', () => {
  test('comes back as it went', () => {
    expect(fromSearch(toSearch(setup))).toEqual(setup)
    const less: MatchSetup = { ...setup, other: null, level: null, lineup: null }
    expect(fromSearch(toSearch(less))).toEqual(less)
  })

  test('is none where the address says nothing of robots', () => {
    expect(fromSearch('')).toBeNull()
    expect(fromSearch('matches=2000&seed=3')).toBeNull()
  })

  test('takes what a new match has for what can not be read', () => {
    const read = fromSearch(
      'ours=a,b,c,d&matches=7&precision=0.9&seed=-1.5&other-ours=x,y,z&best-by=luck&may-1=%25ZZ&rivals=q',
    )
    expect(read).toEqual({
      ours: ['a', 'b', 'c'],
      theirs: [null, null, null],
      level: null,
      replicates: 20000,
      precision: null,
      seed: 1,
      other: null,
      lineup: {
        objective: 'win',
        choices: [null, null, null],
        weight: '1',
        further: [{ slots: ['q', null, null], weight: '1' }],
      },
    })
  })

  test('leaves out options that are no longer there, and a level that the game does not have', () => {
    const known = withKnown(setup, new Set(['a-best', 'c']), ['local', 'state'])
    expect(known.ours).toEqual(['a-best', null, 'a-best'])
    expect(known.theirs).toEqual([null, 'c', null])
    expect(known.other!.theirs).toEqual(['c', null, null])
    expect(known.lineup!.further[0]!.slots).toEqual(['c', null, null])
    expect(known.level).toBe('local')
    expect(withKnown(setup, new Set(), []).level).toBeNull()
  })

  test('begins with one way to play of each design on both sides, or with nobody', () => {
    const way = (id: string, design: string) => ({ id, body: { design } })
    const two = firstSetup([way('a1', 'a'), way('a2', 'a'), way('b1', 'b')], ['local'])
    expect(two.ours).toEqual(['a1', 'b1', 'a1'])
    expect(two.theirs).toEqual(two.ours)
    expect(isComplete(two)).toBe(true)
    expect(isComplete(firstSetup([], []))).toBe(false)
  })
})

test('seconds of holding are written for their goal alone, and can be taken away', () => {
  const body = { format: 1, game: 'g', design: 'd', option: { holdSeconds: { light: 5, other: 2 } } } as never
  expect(withHoldSeconds(body, 'light', 3.2).option.holdSeconds).toEqual({ light: 3.2, other: 2 })
  expect(withHoldSeconds(body, 'light', undefined).option.holdSeconds).toEqual({ other: 2 })
})
