import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { differences, merge, same } from '../../web/data/difference.ts'

const stage = (id: string, seconds: number) => ({ id, duration: { kind: 'fixed', seconds } })
const base = { name: 'Cormorant', drive: { topSpeed: 4, pace: 1.1 }, stages: [stage('lift', 2), stage('fire', 0.3)] }

describe('what changed between two documents', () => {
  test('is named by the smallest part, members of lists by their id', () => {
    const after = { ...base, drive: { topSpeed: 4.2, pace: 1.1 }, stages: [stage('lift', 1.8), stage('fire', 0.3)] }
    expect(differences(base, after)).toEqual([
      { place: ['drive', 'topSpeed'], before: 4, after: 4.2 },
      { place: ['stages', 'lift', 'duration', 'seconds'], before: 2, after: 1.8 },
    ])
  })

  test('a member that came and one that went are named whole', () => {
    const after = { ...base, stages: [stage('lift', 2), stage('aim', 0.5)] }
    expect(differences(base, after)).toEqual([
      { place: ['stages', 'fire'], before: stage('fire', 0.3), after: undefined },
      { place: ['stages', 'aim'], before: undefined, after: stage('aim', 0.5) },
    ])
  })
})

describe('merging two people’s edits', () => {
  test('edits in different places are both kept', () => {
    const mine = { ...base, drive: { topSpeed: 4.2, pace: 1.1 } }
    const theirs = { ...base, stages: [stage('lift', 1.8), stage('fire', 0.3)] }
    expect(merge(base, mine, theirs)).toEqual({
      merged: {
        name: 'Cormorant',
        drive: { topSpeed: 4.2, pace: 1.1 },
        stages: [stage('lift', 1.8), stage('fire', 0.3)],
      },
      both: [],
    })
  })

  test('where both changed, mine stays and the place is named', () => {
    const mine = { ...base, name: 'Mine' }
    const theirs = { ...base, name: 'Theirs', drive: { topSpeed: 3.9, pace: 1.1 } }
    expect(merge(base, mine, theirs)).toEqual({
      merged: { ...base, name: 'Mine', drive: { topSpeed: 3.9, pace: 1.1 } },
      both: [['name']],
    })
  })

  test('a stage that they added stays beside one that I added; one that I removed is gone', () => {
    const mine = { ...base, stages: [stage('fire', 0.3), stage('seat', 0.4)] }
    const theirs = { ...base, stages: [stage('lift', 2), stage('fire', 0.3), stage('aim', 0.5)] }
    const { merged, both } = merge(base, mine, theirs)
    expect(merged.stages.map(({ id }) => id).sort()).toEqual(['aim', 'fire', 'seat'])
    expect(both).toEqual([])
  })

  test('who changed nothing gets the other’s document, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (before, after) => {
        expect(same(merge(before, before, after).merged, after)).toBe(true)
        expect(same(merge(before, after, before).merged, after)).toBe(true)
      }),
    )
  })
})
