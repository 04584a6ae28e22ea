import { describe, expect, it } from 'vitest'
import { pieceWorth } from '../../../src/model/compare/index.ts'
import { Planner } from '../../../src/model/plan/index.ts'
import { game, leaving, mooring } from './harbour.ts'

const planner = new Planner(game)

describe('the worth of one more piece in hand', () => {
  it('is the gain of a started trip: 3 s of collecting and 2 s of scoring for 4 points, nothing else to do', () => {
    const found = pieceWorth(game, leaving, { spot: 'quay.1', planner })
    expect(found).toMatchObject({ spot: 'quay.1', piece: 'crate' })
    // Holding, the robot scores once and then as often as 5 s fit; empty, as often as 5 s fit.
    const closed = (t: number) => 4 * ((t < 2 ? 0 : 1 + Math.floor((t - 2) / 5)) - Math.floor(t / 5))
    expect(found.loads).toHaveLength(1)
    expect(found.loads[0]).toMatchObject({ from: 0, to: 1 })
    expect(found.loads[0]!.at).toHaveLength(31)
    for (const [t, points] of found.loads[0]!.at) expect(points, `${t} s left`).toBeCloseTo(closed(t), 9)
  })

  it('of a second piece in one load is its own 4 points, as soon as there is time to score: 4 each, one scoring of 2 s', () => {
    const hauler = { ...leaving, robot: { ...leaving.robot, carries: { crate: 2 } } }
    const { loads } = pieceWorth(game, hauler, { spot: 'quay.1', planner })
    expect(loads.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 2],
    ])
    // A load of two is scored in the same 2 s as a load of one, so from 2 s left on the second brings 4 more.
    for (const [t, points] of loads[1]!.at) expect(points, `${t} s left`).toBeCloseTo(t < 2 ? 0 : 4, 9)
  })

  it('is nothing where the finish is best with or without it, and counts the finish that waits after scoring', () => {
    const best = { ...mooring, finish: { mode: 'best' as const } }
    const { loads } = pieceWorth(game, best, { spot: 'quay.1', planner })
    const at = (t: number) => loads[0]!.at.find(([left]) => left === t)![1]
    // With 8 or 9 s left the mooring (8 s, 0.5 · 20 = 10) is best either way; a piece scored first would take 2 s of them.
    expect(at(8)).toBeCloseTo(0, 9)
    expect(at(9)).toBeCloseTo(0, 9)
    // With 10 s: 4 + 10 holding (2 + 8 s), 10 empty.
    expect(at(10)).toBeCloseTo(4, 9)
  })

  it('refuses a spot where the option collects nothing', () => {
    expect(() => pieceWorth(game, leaving, { spot: 'shed.1', planner })).toThrow('collects nothing')
    const idle = { ...leaving, role: { ...leaving.role, sources: [] } }
    expect(() => pieceWorth(game, idle, { spot: 'quay.1', planner })).toThrow('collects nothing')
  })
})
