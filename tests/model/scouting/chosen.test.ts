import { expect, test } from 'vitest'
import { type Candidate, type Chosen, chosenRecords, counts, inMatch } from '../../../src/model/scouting/index.ts'

const record = (id: string, arrival: number, replaces: string | null = null) => ({ arrival, row: { id }, replaces })
const about = (id: string, team = '1', match: string | null = 'q1'): Candidate => ({ id, match, team })
const choose = (of: string | null, team = '1'): Chosen => ({ match: 'q1', team, record: of })
const key = inMatch('q1', '1')

test('The last choice of a robot holds, and none of another robot is touched by it', () => {
  const records = [record('a', 1), record('b', 2), record('c', 3)]
  const inForce = [about('a'), about('b'), about('c', '2')]
  const chosen = chosenRecords([choose('a'), choose('c', '2'), choose('b')], records, inForce)
  expect(inForce.map((each) => counts(each, chosen))).toEqual([false, true, true])
  expect(chosenRecords([choose('a'), choose(null)], records, inForce).size).toBe(0)
})

test('A choice goes on with what takes the place of the chosen record, the later of two', () => {
  const records = [record('a', 1), record('a2', 2, 'a'), record('a3', 4, 'a2'), record('other', 3, 'a2')]
  expect(chosenRecords([choose('a')], records, [about('a3')]).get(key)).toBe('a3')
})

test('A choice is void where its record is now about another robot or match, and records that replace each other end', () => {
  const records = [record('a', 1), record('a2', 2, 'a')]
  expect(chosenRecords([choose('a')], records, [about('a2', '2')]).size).toBe(0)
  expect(chosenRecords([choose('a')], records, [about('a2', '1', 'q2')]).size).toBe(0)
  const circle = [record('a', 1, 'b'), record('b', 2, 'a')]
  expect(chosenRecords([choose('a')], circle, []).size).toBe(0)
})

test('What is of no match counts', () => {
  expect(counts(about('a', '1', null), new Map([[key, 'b']]))).toBe(true)
})
