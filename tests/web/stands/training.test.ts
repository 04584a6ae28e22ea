import { expect, test } from 'vitest'
import type { Happening } from '../../../src/model/scouting/types.ts'
import { compare, compareCounts } from '../../../web/stands/training/compare.ts'
import { whereAt } from '../../../web/stands/training/film.ts'

const scored = (elapsed: number, n?: number): Happening => ({ elapsed, what: 'scored', goal: 'piers', ...(n && { n }) })

test('each tap finds one thing at most, the nearest in time, within 2 s', () => {
  // 10.5 finds 10 (0.5 s late), 11.9 finds 11 (0.9 s late); 20 is missed by 2.1 s, so that it counts as missed and as too many.
  const [row] = compare([scored(10), scored(11), scored(20)], [scored(10.5), scored(11.9), scored(22.1)], 150)
  expect(row).toMatchObject({ happened: 3, found: 2, extra: 1 })
  expect(row!.late).toBeCloseTo(0.7, 9)
})

test('a volley counts as so many taps, what came after the stop does not, and a kind does not find another', () => {
  expect(compare([scored(10), scored(10.4), scored(90)], [scored(11, 3)], 60)).toMatchObject([
    { happened: 2, found: 2, extra: 1 },
  ])
  const collected: Happening = { elapsed: 10, what: 'collected', source: 'outer' }
  expect(compare([collected], [scored(10)], 60).map(({ found, extra }) => [found, extra])).toEqual([
    [0, 0],
    [0, 1],
  ])
  // Nothing tells whether this was so.
  expect(compare([], [{ elapsed: 3, what: 'unseen' }], 60)).toEqual([])
})

test('who only counts is compared by how many in each period, with what was scored until the stop', () => {
  // Autonomous 15 s and a pause of 3 s: pieces that are still flying then belong to it.
  const clock = { auto: 15, pause: 3, teleop: 135 } as Parameters<typeof compareCounts>[2]['clock']
  const tap = (period: 'auto' | 'teleop', n?: number) => ({ ...scored(0, n), period })
  const truth = [scored(5), scored(16), scored(20), scored(30), scored(100)]
  const rows = compareCounts(truth, [tap('auto'), tap('teleop', 4)], { until: 60, clock })
  expect(rows).toMatchObject([
    { period: 'auto', happened: 2, found: 1, extra: 0, late: null },
    { period: 'teleop', happened: 2, found: 2, extra: 2, late: null },
  ])
})

test('a robot goes straight between two points of its track, and stays where it ends', () => {
  const track: [number, number, number][] = [
    [0, 1, 2],
    [10, 3, 4],
  ]
  expect([0, 5, 10, 99].map((time) => whereAt(track, time))).toEqual([
    [1, 2],
    [2, 3],
    [3, 4],
    [3, 4],
  ])
})
