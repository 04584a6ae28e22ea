import { describe, expect, it } from 'vitest'
import {
  type SelectionRules,
  type SelectionStep,
  selectionAfter,
  turnsOf,
} from '../../../src/model/picks/selection/index.ts'

const rules: SelectionRules = {
  alliances: 4,
  size: 3,
  serpentine: true,
  captainsInvitable: true,
  afterDeclining: 'captain',
}
const seeds = 'a b c d e f g h i j k l m'.split(' ')

/** '+b' accepts, '-b' declines, '!b' withdraws, '3<b' joins alliance 3. */
const steps = (text: string): SelectionStep[] =>
  text.split(' ').map((mark): SelectionStep => {
    const team = mark.at(-1) as string
    if (mark[1] === '<') return { kind: 'joins', team, alliance: Number(mark[0]) }
    return { kind: mark[0] === '+' ? 'accepts' : mark[0] === '-' ? 'declines' : 'withdraws', team }
  })

const upTo = (text: string, change: Partial<SelectionRules> = {}) => {
  const { selection, refused } = selectionAfter({ ...rules, ...change }, seeds, text ? steps(text) : [])
  const { state } = selection
  return {
    refused,
    selection,
    alliances: state.alliances.map(({ captain, partners }) => [captain ?? '·', ...partners].join('')),
    turn: state.turn && `${state.turn.alliance}.${state.turn.round}`,
    free: state.free.join(''),
  }
}

describe('a selection, held against a protocol written by hand', () => {
  // Thirteen teams a … m, four alliances of three, back and forth. What each line leads to was worked out on paper.
  const protocol: [step: string, alliances: string, turn: string | null, free: string][] = [
    ['', 'a b c d', '1.1', 'bcdefghijklm'],
    // b stays captain, and nobody may ask it again.
    ['-b', 'a b c d', '1.1', 'cdefghijklm'],
    // c is captain no more: d moves up to the third alliance, e becomes the fourth captain.
    ['+c', 'ac b d e', '2.1', 'defghijklm'],
    ['-f', 'ac b d e', '2.1', 'deghijklm'],
    // The fourth captain is taken: f, who declined to be a partner, becomes captain.
    ['+e', 'ac be d f', '3.1', 'ghijklm'],
    ['+h', 'ac be dh f', '4.1', 'gijklm'],
    ['-g', 'ac be dh f', '4.1', 'ijklm'],
    ['+i', 'ac be dh fi', '4.2', 'jklm'],
    // Back again: the fourth first.
    ['+m', 'ac be dh fim', '3.2', 'jkl'],
    ['+j', 'ac be dhj fim', '2.2', 'kl'],
    ['!k', 'ac be dhj fim', '2.2', 'l'],
    // Nobody is left for the first alliance: it stays at two. g declined, and is left for who breaks down.
    ['+l', 'ac bel dhj fim', null, 'g'],
    ['1<g', 'acg bel dhj fim', null, ''],
  ]

  it('is where the protocol is after each line', () => {
    const so: string[] = []
    for (const [step, alliances, turn, free] of protocol) {
      if (step) so.push(step)
      const now = upTo(so.join(' '))
      expect(now.refused, step).toBeNull()
      expect([now.alliances.join(' '), now.turn, now.free], step).toEqual([alliances, turn, free])
    }
  })

  it('is undone by leaving the last step out', () => {
    expect(upTo('-b +c').alliances).toEqual(upTo('-b +c +d').alliances.with(1, 'b').with(2, 'd').with(3, 'e'))
    expect(upTo('-b +c').free).toContain('d')
  })

  it('refuses what can not be, says why, and keeps what came before', () => {
    const why = (text: string, change: Partial<SelectionRules> = {}) => upTo(text, change).refused?.why
    expect(why('+z')).toBe('unknown')
    expect(why('+a')).toBe('own')
    expect(why('-b +b')).toBe('declined')
    expect(why('+c -d +c')).toBe('taken')
    // A captain who has had its turn, and any captain in later rounds.
    expect(why('+e +a')).toBe('captain')
    expect(why('+e +f +g +h +b')).toBe('captain')
    expect(why('+b', { captainsInvitable: false })).toBe('captain')
    expect(why('!e +e')).toBe('withdrawn')
    expect(why('+e !e')).toBe('taken')
    expect(why('1<e')).toBe('running')
    expect(why('+e +f +g +h +i +j +k +l +m')).toBe('over')
    expect(why('+e +f +g +h +i +j +k +l 5<m')).toBe('noAlliance')
    const kept = upTo('+c -d +d +f')
    expect(kept.refused).toMatchObject({ index: 2, step: { kind: 'accepts', team: 'd' } })
    expect(kept.alliances).toEqual(['ac', 'b', 'd', 'e'])
  })
})

describe('the rules', () => {
  it('declare the order: back and forth, or each round from the first', () => {
    const order = (change: Partial<SelectionRules>) =>
      turnsOf({ ...rules, alliances: 3, size: 4, ...change }).map(({ alliance }) => alliance)
    expect(order({})).toEqual([1, 2, 3, 3, 2, 1, 1, 2, 3])
    expect(order({ serpentine: false })).toEqual([1, 2, 3, 1, 2, 3, 1, 2, 3])
    expect(order({ size: 1 })).toEqual([])
  })

  it('say whether who declined may become captain', () => {
    // f declines, then two captains are taken: the next in line is f, or g where declining costs it.
    expect(upTo('-f +c +d').alliances).toEqual(['ac', 'bd', 'e', 'f'])
    expect(upTo('-f +c +d', { afterDeclining: 'out' }).alliances).toEqual(['ac', 'bd', 'e', 'g'])
    // c was captain when it declined, and stays it.
    expect(upTo('-c +d', { afterDeclining: 'out' }).alliances).toEqual(['ad', 'b', 'c', 'e'])
  })

  it('let the next seed take the place of a captain who is not there', () => {
    expect(upTo('!b').alliances).toEqual(['a', 'c', 'd', 'e'])
    // The captain whose turn it is can not be there either: the next seed has its turn.
    expect(upTo('+e !b').alliances).toEqual(['ae', 'c', 'd', 'f'])
    expect(upTo('+e +f !b').refused?.why).toBe('taken')
  })

  it('leave alliances out that have no captain', () => {
    const { selection } = selectionAfter({ ...rules, alliances: 4 }, ['a', 'b', 'c'], [])
    expect(selection.state.alliances.map(({ captain }) => captain)).toEqual(['a', 'b', 'c', null])
    const all = selection.take({ kind: 'accepts', team: 'c' }).state
    expect(all.alliances.map(({ captain }) => captain)).toEqual(['a', 'b', null, null])
    expect(all.turn).toBeNull()
  })
})
