import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { reachProblems, standing } from '../../../src/model/field/index.ts'
import { box } from './fields.ts'

const footprint = { length: 0.85, width: 0.85 }

describe('where a robot gets', () => {
  test('everywhere on the demo field', () => {
    expect(reachProblems(game, footprint)).toEqual([])
  })

  test('a spot inside a grown obstacle is named with the obstacle and how far the robot keeps', () => {
    const goals = game.goals.map((goal) =>
      goal.id === 'gantry' ? { ...goal, spots: [{ id: 'gantry.foot', at: [3.7, 4.1] as [number, number] }] } : goal,
    )
    // The leg ends at 3.3 m, and half of 0.85 m and 0.05 m make 0.475 m: 3.7 m is 0.075 m too near.
    expect(reachProblems({ ...game, goals }, footprint)).toMatchObject([
      {
        path: ['goals', 1, 'spots', 0, 'at'],
        message:
          "'Gantry' is too near the obstacle 'Legs of the home gantry': the robot’s centre keeps 0.475 m from it",
      },
    ])
  })

  test('a start at the wall is too near the border', () => {
    const starts = [{ ...game.starts[0]!, at: [0.2, 4] as [number, number] }, ...game.starts.slice(1)]
    expect(reachProblems({ ...game, starts }, footprint).map(({ path }) => path)).toEqual([['starts', 0, 'at']])
  })

  test('what lies behind a wall without a gap is unreachable, and each such spot is said', () => {
    const wall = { id: 'wall', name: 'Wall', outline: box(8, 0, 8.2, 8.2) }
    const field = { ...game.field, obstacles: [wall] }
    const problems = reachProblems({ ...game, field }, footprint)
    // Beyond 8.2 m lie both spots of the outer slipway; the channel's at 8.3 m stands too near the wall.
    expect(problems.map(({ path }) => path.join('/'))).toEqual([
      'sources/0/spots/0/at',
      'sources/0/spots/1/at',
      'sources/1/spots/0/at',
      'goals/2/spots/0/at',
    ])
    expect(problems[0]!.message).toMatch(/^There is no way from 'South quay' to 'Outer slipway'/)
    expect(problems[2]!.message).toMatch(/too near the obstacle 'Wall'/)
  })

  test('standing allows touching and nothing nearer', () => {
    const free = standing(game.field, footprint)
    expect(free([3.775, 4.1])).toBe(true)
    expect(free([3.774, 4.1])).toBe(false)
  })
})
