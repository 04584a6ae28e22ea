import { expect, it } from 'vitest'
import { type PickLine, protocolOf, refusedLine, type Written } from '../../../src/model/picks/protocol/index.ts'
import { membersOf, type SelectionRules } from '../../../src/model/picks/selection/index.ts'

const rules: SelectionRules = {
  alliances: 2,
  size: 3,
  serpentine: true,
  captainsInvitable: true,
  afterDeclining: 'captain',
}
const seeds = ['a', 'b', 'c', 'd', 'e', 'f']
const written = (lines: readonly PickLine[]): Written[] => lines.map((line, k) => ({ id: `l${k}`, line }))
const begins: PickLine = { kind: 'begins', rules, seeds }
const accepts = (team: string): PickLine => ({ kind: 'called', step: { kind: 'accepts', team } })
const declines = (team: string): PickLine => ({ kind: 'called', step: { kind: 'declines', team } })
const undoes = (line: string): PickLine => ({ kind: 'undoes', line })
const alliances = (lines: readonly PickLine[]) =>
  protocolOf(written(lines)).selection?.state.alliances.map((each) => membersOf(each).join(''))

it('undoing takes back one line after the other, the beginning of a selection too', () => {
  const lines = [begins, accepts('b'), declines('d'), accepts('e')]
  expect(alliances(lines)).toEqual(['ab', 'ce'])
  expect(alliances([...lines, undoes('l3')])).toEqual(['ab', 'c'])
  // Once the acceptance is taken back, the decline before it is the last line: d may be asked again.
  const twice = [...lines, undoes('l3'), undoes('l2')]
  expect(protocolOf(written(twice)).selection?.state.declined).toEqual([])
  // A further selection does not know what was called out in the first; undone, the first goes on.
  const anew: PickLine[] = [...lines, { ...begins, seeds: [...seeds].reverse() }]
  expect(alliances(anew)).toEqual(['f', 'e'])
  expect(alliances([...anew, undoes('l4')])).toEqual(['ab', 'ce'])
})

it('what can not follow is refused where it is written, and passed over where it stands', () => {
  const before = written([begins, accepts('b')])
  const refused = (...lines: PickLine[]) =>
    refusedLine(
      before,
      lines.map((line, k) => ({ id: `m${k}`, line })),
    )
  expect(refused(accepts('e'), accepts('d'))).toBeNull()
  expect(refused(accepts('e'), accepts('e'))).toEqual({
    index: 1,
    refusal: { why: 'refused', team: 'e', reason: 'taken' },
  })
  expect(refused(undoes('l0'))).toEqual({ index: 0, refusal: { why: 'notLast' } })
  expect(refused({ ...begins, seeds: ['a', 'b', 'a'] })?.refusal).toEqual({ why: 'seedTwice', team: 'a' })
  expect(refusedLine([], written([accepts('a')]))?.refusal).toEqual({ why: 'notBegun' })
  expect(alliances([accepts('c'), begins, accepts('b'), accepts('b'), accepts('e')])).toEqual(['ab', 'ce'])
})

it('notes are of their own topics, the last one counts', () => {
  const note = (team: string, reason: string | null): PickLine => ({ kind: 'aside', team, reason })
  const { aside, order, newest } = protocolOf(
    written([
      note('a', 'unsafe'),
      note('b', 'late'),
      { kind: 'order', teams: ['c', 'a'] },
      note('a', null),
      { kind: 'order', teams: ['b'] },
      begins,
    ]),
  )
  expect([...aside]).toEqual([['b', 'late']])
  expect(order).toEqual(['b'])
  expect(newest).toEqual({ aside: 'l3', order: 'l4', selection: 'l5' })
})
