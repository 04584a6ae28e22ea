import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { checkNetwork } from '../../../src/model/documents/checkNetwork.ts'
import type { Stage } from '../../../src/model/documents/types.ts'
import { legReport } from '../../../src/model/leg/index.ts'
import {
  exchanged,
  freeStageId,
  insertedAfter,
  neighbour,
  waitingChain,
  withoutStage,
} from '../../../web/screens/designs/network.ts'
import { presentReport } from '../../../web/screens/designs/present.ts'

const stage = (id: string, seconds: number, after: string[]): Stage => ({
  id,
  name: id.toUpperCase(),
  duration: { kind: 'fixed', seconds },
  after,
})

/** a (2 s) and b (3 s) begin at once, c waits for both, d for c. */
const trip = [stage('a', 2, []), stage('b', 3, ['drive']), stage('c', 1, ['a', 'b']), stage('d', 1, ['c'])]

const waits = (stages: readonly Stage[]) => Object.fromEntries(stages.map(({ id, after }) => [id, after]))

describe('what a stage may wait for', () => {
  test('not itself, and nothing that waits for it, however far away: the chain says why', () => {
    expect(waitingChain(trip, 'a', 'a')).toEqual(['a'])
    expect(waitingChain(trip, 'a', 'd')).toEqual(['d', 'c', 'a'])
    expect(waitingChain(trip, 'b', 'c')).toEqual(['c', 'b'])
    expect(waitingChain(trip, 'd', 'a')).toBeNull()
    expect(waitingChain(trip, 'a', 'drive')).toBeNull()
  })

  test('it refuses exactly what the model refuses, for every pair of stages', () => {
    for (const one of trip)
      for (const other of trip) {
        const asked = trip.map((each) => (each === one ? { ...each, after: [...each.after, other.id] } : each))
        const loops = checkNetwork({ stages: asked }, []).some(({ message }) => message.includes('waits for itself'))
        expect(waitingChain(trip, one.id, other.id) !== null, `${one.id} after ${other.id}`).toBe(loops)
      }
  })
})

describe('the order of stages', () => {
  test('before a stage comes the one it waits for that ends last, after it the one that begins first', () => {
    expect(neighbour(trip, 'c', -1)).toBe('b')
    expect(neighbour(trip, 'b', 1)).toBe('c')
    expect(neighbour(trip, 'a', -1)).toBeNull()
    expect(neighbour(trip, 'd', 1)).toBeNull()
  })

  test('two that change places wait for what the other waited for, and keep their own times', () => {
    const next = exchanged(trip, 'c', 'b')
    expect(waits(next)).toEqual({ a: [], c: ['drive'], b: ['a', 'c'], d: ['b'] })
    expect(next.map(({ id }) => id)).toEqual(['a', 'c', 'b', 'd'])
    expect(next.find(({ id }) => id === 'b')).toMatchObject({ name: 'B', duration: { seconds: 3 } })
    expect(checkNetwork({ stages: next }, [])).toEqual([])
    expect(exchanged(next, 'c', 'b')).toEqual(trip)
  })

  test('no exchange of the demo’s stages makes a circle', () => {
    const { robot } = optionOf('shearwater-best')
    const trips = [
      ...Object.values(robot.collect),
      ...Object.values(robot.score).flat(),
      ...Object.values(robot.finish),
    ]
    let tried = 0
    for (const each of trips)
      if ('stages' in each)
        for (const { id } of each.stages) {
          const other = neighbour(each.stages, id, 1)
          if (other === null) continue
          tried++
          expect(checkNetwork({ stages: exchanged(each.stages, id, other) }, [])).toEqual([])
        }
    expect(tried).toBeGreaterThan(10)
  })

  test('without a stage, what waited for it waits for what it waited for, and for nothing twice', () => {
    expect(waits(withoutStage(trip, 'c'))).toEqual({ a: [], b: ['drive'], d: ['a', 'b'] })
    const twice = [...trip.slice(0, 3), stage('d', 1, ['c', 'b'])]
    expect(waits(withoutStage(twice, 'c'))['d']).toEqual(['a', 'b'])
  })

  test('with a stage between, what waited for the one before waits for the new one: the trip is as much longer', () => {
    const longer = insertedAfter(trip, 'b', { id: 'n', name: 'N', duration: { kind: 'fixed', seconds: 2 } })
    expect(waits(longer)).toEqual({ a: [], b: ['drive'], n: ['b'], c: ['a', 'n'], d: ['c'] })
    expect(checkNetwork({ stages: longer }, [])).toEqual([])
    // After the last one it is a new last one.
    expect(waits(insertedAfter(trip, 'd', { ...longer[2]! }))).toEqual({ ...waits(trip), n: ['d'] })
    expect(waits(withoutStage(longer, 'n'))).toEqual(waits(trip))
  })

  test('a new stage has an id that is free', () => {
    expect(freeStageId([...trip, stage('stage-6', 1, [])])).toBe('stage-7')
  })
})

describe('the bars at the times that a trip has now', () => {
  const { robot } = optionOf('shearwater-best')
  const trip = robot.score['gantry']![0]!
  const leg = {
    kind: 'score' as const,
    goal: 'gantry',
    entry: 0,
    spot: 'gantry.foot',
    from: 'channel.ramp',
    piece: 'buoy',
    load: 1,
  }
  const report = legReport(breakwater.game, robot, leg)
  const longer = {
    ...trip,
    stages:
      'stages' in trip
        ? trip.stages.map((each) =>
            each.id === 'let-go' ? { ...each, duration: { kind: 'fixed' as const, seconds: 1.2 } } : each,
          )
        : [],
  }

  test('they are where the model puts them', () => {
    const changed = { ...robot, score: { ...robot.score, gantry: [longer, ...robot.score['gantry']!.slice(1)] } }
    const model = legReport(breakwater.game, changed, leg)
    const shown = presentReport(report, trip, longer, 1)
    // The last stage a second longer: the leg too. The model's means are those of a grid of 0.01 s.
    expect(shown.mean - report.mean).toBeCloseTo(1, 6)
    for (const stage of model.stages) {
      const bar = shown.stages.find(({ id }) => id === stage.id)!
      expect(Math.abs(bar.earliestStart - stage.earliestStart), stage.id).toBeLessThan(0.03)
      expect(Math.abs(bar.latestFinish - stage.latestFinish), stage.id).toBeLessThan(0.03)
    }
  })

  test('what has not changed stays the report itself, and a trip in a circle shows its last one', () => {
    expect(presentReport(report, trip, trip, 1)).toBe(report)
    const circle = { ...longer, stages: longer.stages.map((each) => ({ ...each, after: ['let-go'] })) }
    expect(presentReport(report, trip, circle, 1)).toBe(report)
  })

  test('a whole trip moves by what its guess moves, retries stay', () => {
    const whole = { ...report, mean: 9, stages: [] }
    const [before, now] = [8, 10].map((seconds) => ({ whole: { kind: 'fixed' as const, seconds } }))
    expect(presentReport(whole, before!, now!, 1).mean).toBe(11)
  })
})
