import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Game, Option, Point } from '../../../src/model/documents/types.ts'
import { fieldRoutes, travel, travelSeconds } from '../../../src/model/field/index.ts'
import { box, disc, fieldWith } from './fields.ts'

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../reference/${name}`, import.meta.url), 'utf8'))
const { game, options }: { game: Game; options: Option[] } = read('reference-breakwater.json')
const rows: { option: string; from: string; to: string; length: number; seconds: number }[] = read(
  'reference-breakwater.expected.json',
).travel
const robotOf = (id: string) => options.find((option) => option.id === id)!.robot

describe('the reference case', () => {
  // tests/reference/README.md: computed independently from a tangent graph in another language; 1e-6 relative.
  test.each([...new Set(rows.map(({ option }) => option))])('%s drives as far and as long', (option) => {
    for (const row of rows.filter((each) => each.option === option)) {
      const { length, seconds } = travel(game, robotOf(option), row.from, row.to)
      expect(Math.abs(length - row.length), `length ${row.from} – ${row.to}`).toBeLessThanOrEqual(1e-6 * row.length)
      expect(Math.abs(seconds - row.seconds), `seconds ${row.from} – ${row.to}`).toBeLessThanOrEqual(1e-6 * row.seconds)
    }
  })

  test('has its 260 rows, of which many bend', () => {
    expect(rows).toHaveLength(260)
    expect(
      rows.filter((row) => travel(game, robotOf(row.option), row.from, row.to).path.length > 2).length,
    ).toBeGreaterThan(80)
  })
})

/** A wall with a gap of 0.8 m, a start on the left, a source with two spots on the right, a goal in a closed yard. */
const small: Game = {
  ...game,
  field: fieldWith([
    box(7, 0, 8, 3.6),
    box(7, 4.4, 8, 8),
    box(12, 2, 13, 2.1),
    box(2, 5.5, 4, 5.6),
    box(2, 7.2, 4, 7.3),
  ]),
  starts: [{ id: 'left', name: 'Left corner', at: [3, 2] }],
  sources: [
    {
      ...game.sources[0]!,
      name: 'Heap',
      spots: [
        { id: 'near', at: [10, 4] },
        { id: 'far', at: [12.5, 2.2] },
      ],
    },
  ],
  goals: [{ ...game.goals[0]!, name: 'Shelf', spots: [{ id: 'edge', at: [0.2, 4] }] }],
  finishes: [],
}
const robot = (radius: number) => ({ ...options[0]!.robot, footprint: disc(radius) })

describe('a way between two places', () => {
  test('is as long and takes as long as its route, and its path runs from one to the other', () => {
    const one = robot(0.35)
    const { length, seconds, path } = travel(small, one, 'left', 'near')
    const route = fieldRoutes(small.field, one.footprint).route([3, 2], [10, 4])!
    expect(length).toBe(route.length)
    expect(seconds).toBe(travelSeconds(route.segments, one.drive))
    expect(seconds).toBeGreaterThanOrEqual(length / one.drive.topSpeed)
    expect(path[0]).toEqual([3, 2])
    expect(path.at(-1)).toEqual([10, 4])
  })

  test('draws arcs with a point at least every centimetre', () => {
    const { path, length } = travel(small, robot(0.35), 'left', 'near')
    const { segments } = fieldRoutes(small.field, disc(0.35)).route([3, 2], [10, 4])!
    const arcs = segments.filter(({ kind }) => kind === 'arc')
    expect(arcs.length).toBeGreaterThan(0)
    const steps = path.slice(1).map(([x, y]: Point, i) => Math.hypot(x - path[i]![0], y - path[i]![1]))
    expect(steps.filter((step) => step > 0.01 + 1e-9)).toHaveLength(segments.length - arcs.length)
    expect(steps.reduce((a, b) => a + b)).toBeCloseTo(length, 4)
  })

  test('to itself has no length and takes no time, but the place must be free', () => {
    expect(travel(small, robot(0.35), 'near', 'near')).toEqual({ length: 0, seconds: 0, path: [[10, 4]] })
    expect(() => travel(small, robot(0.35), 'far', 'far')).toThrow(expect.objectContaining({ code: 'unreachable' }))
  })
})

describe('where there is no way, a sentence', () => {
  const refusal = (radius: number, from: string, to: string) => {
    try {
      travel(small, robot(radius), from, to)
    } catch (error) {
      return error
    }
    throw new Error('a way was found')
  }

  test('names both places and the room needed when the gap is too narrow', () => {
    expect(travel(small, robot(0.4), 'left', 'near').length).toBeGreaterThan(7)
    expect(refusal(0.41, 'left', 'near')).toMatchObject({
      code: 'unreachable',
      message:
        "There is no way from 'Left corner' to 'Heap' (spot 'near'): no gap is wide enough for the robot, whose centre keeps 0.41 m from obstacles and border.",
    })
  })

  test('names the obstacle that a spot is too near, and where the game says so', () => {
    expect(refusal(0.35, 'left', 'far')).toMatchObject({
      code: 'unreachable',
      message:
        "There is no way from 'Left corner' to 'Heap' (spot 'far'): 'Heap' (spot 'far') at (12.5, 2.2) is too near the obstacle 'Rock 2' for the robot, whose centre keeps 0.35 m from it.",
      path: ['game', 'sources', 0, 'spots', 1, 'at'],
    })
  })

  test('names the border that a spot is too near', () => {
    expect(refusal(0.35, 'edge', 'near')).toMatchObject({
      code: 'unreachable',
      message: expect.stringContaining("'Shelf' at (0.2, 4) is too near the field's border"),
      path: ['game', 'goals', 0, 'spots', 0, 'at'],
    })
  })

  test('says which id the game does not have', () => {
    expect(refusal(0.35, 'left', 'nowhere')).toMatchObject({
      code: 'invalid',
      message: "The game has no start or spot with the id 'nowhere'.",
      path: ['to'],
    })
  })
})
