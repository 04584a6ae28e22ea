import { describe, expect, it, test } from 'vitest'
import type { Auto, Option } from '../../../src/model/documents/types.ts'
import { clashesOf } from '../../../src/model/match/clashes.ts'
import { firstMeeting, type Motion } from '../../../src/model/match/meeting.ts'
import { game, optionNamed } from '../reference.ts'

const base = optionNamed('petrel-plain')

/** A robot of 0.8 m by 1 m (radius 0.4 m) that plays a routine, or stands at its start without one. */
function robot(start: string, routine: Partial<Auto> | null): Option {
  const auto: Auto = {
    id: 'own',
    name: 'Own',
    starts: [start],
    steps: [],
    leaves: 1,
    endsAt: start,
    holding: null,
    ...routine,
  }
  const own = { ...base.robot, footprint: { length: 1, width: 0.8 }, autos: [auto] }
  return { ...base, start, auto: routine ? 'own' : null, robot: own }
}

describe('two paths', () => {
  const east: Motion = [
    [0, 0, 0],
    [10, 10, 0],
  ]

  it('that cross at one time meet where the gap closes to both radii', () => {
    const north: Motion = [
      [0, 5, -5],
      [10, 5, 5],
    ]
    // At t both are |5 − t| from the crossing, at right angles: apart by √2 · |5 − t|, so 0.8 at t = 5 − 0.8 / √2.
    const met = firstMeeting([east, north], 0.8, 15)!
    expect(met.at).toBeCloseTo(5 - 0.8 / Math.SQRT2, 12)
    expect(met.distance).toBeCloseTo(0, 12)
  })

  it('that cross at different times do not meet', () => {
    const later: Motion = [
      [2, 5, -5],
      [12, 5, 5],
    ]
    // The second is 2 s behind: (5 − t, 7 − t) apart, nearest at t = 6 with √2.
    expect(firstMeeting([east, later], 1.41, 15)).toBeNull()
    expect(firstMeeting([east, later], 1.42, 15)!.distance).toBeCloseTo(Math.SQRT2, 12)
  })

  it('meet a robot that stands in the way, and only while autonomous lasts', () => {
    const stands: Motion = [[0, 8, 0.3]]
    // 0.8² = (8 − t)² + 0.3²
    expect(firstMeeting([east, stands], 0.8, 15)!.at).toBeCloseTo(8 - Math.sqrt(0.64 - 0.09), 12)
    expect(firstMeeting([east, stands], 0.8, 7)).toBeNull()
  })

  it('agree with a step-by-step look at random bent paths', () => {
    let state = 1
    const random = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    const bent = (): Motion => [0, 2, 3, 7, 11].map((t) => [t + random(), 6 * random(), 6 * random()] as const)
    const place = (motion: Motion, t: number) => {
      if (t <= motion[0]![0]) return motion[0]!
      for (let k = 1; k < motion.length; k++) {
        const [a, b] = [motion[k - 1]!, motion[k]!]
        if (t < b[0]) return [t, ...[1, 2].map((i) => a[i]! + ((t - a[0]) / (b[0] - a[0])) * (b[i]! - a[i]!))]
      }
      return motion.at(-1)!
    }
    let met = 0
    for (let n = 0; n < 40; n++) {
      const pair: [Motion, Motion] = [bent(), bent()]
      const gaps = Array.from({ length: 15_001 }, (_, k) => {
        const [p, q] = pair.map((motion) => place(motion, k / 1000))
        return Math.hypot(p![1]! - q![1]!, p![2]! - q![2]!)
      })
      const first = gaps.findIndex((gap) => gap < 0.8)
      const found = firstMeeting(pair, 0.8, 15)
      // A step of 1 ms at less than 20 m/s between the two; gaps that are grazed for less are left to the closed form.
      if (first >= 0) expect(found!.at).toBeGreaterThan(first / 1000 - 0.0011)
      if (first >= 0) expect(found!.at).toBeLessThanOrEqual(first / 1000)
      if (first >= 0) expect(Math.abs(found!.distance - Math.min(...gaps))).toBeLessThan(0.02)
      if (found && first < 0) expect(found.distance).toBeGreaterThan(0.78)
      met += Number(found !== null)
    }
    expect(met).toBeGreaterThan(5)
    expect(met).toBeLessThan(40)
  })
})

describe('partners', () => {
  test('at one start are named with it, and once', () => {
    const clashes = clashesOf(game, [robot('s1', {}), robot('s2', null), robot('s1', null)])
    expect(clashes).toEqual([{ kind: 'start', partners: [0, 2], distance: 0, touching: 0.8 }])
  })

  test('whose starts are apart by both radii or more do not clash there', () => {
    const near = { ...game, starts: game.starts.map((start) => ({ ...start, at: [...start.at] as [number, number] })) }
    near.starts[1]!.at = [1.2, 2.8]
    expect(clashesOf(near, [robot('s1', null), robot('s2', null), robot('s3', null)])).toEqual([])
    near.starts[1]!.at = [1.2, 2.79]
    expect(clashesOf(near, [robot('s1', null), robot('s2', null), robot('s3', null)])).toMatchObject([
      { kind: 'start', partners: [0, 1] },
    ])
  })

  test('whose paths cross at one time are told when; a routine that does not say where it drives is not followed', () => {
    // From (1.2, 2) and (1.2, 6.2) to the same place between: 2.1 m each in 7 s, 0.3 m/s, so 0.8 m apart after (4.2 − 0.8) / 0.6 s.
    const up = robot('s1', {
      endsAt: 's2',
      path: [
        [0, 1.2, 2],
        [7, 1.2, 4.1],
      ],
    })
    const down = robot('s3', {
      endsAt: 's2',
      path: [
        [0, 1.2, 6.2],
        [7, 1.2, 4.1],
      ],
    })
    const far = robot('s2', { endsAt: 'davit.1' })
    const [clash, ...others] = clashesOf(game, [up, down, far])
    expect(others).toEqual([])
    expect(clash).toMatchObject({ kind: 'path', partners: [0, 1], touching: 0.8 })
    expect(clash).toHaveProperty('at', expect.closeTo(3.4 / 0.6, 6))
    // Without paths the two still end in one place.
    const blind = [robot('s1', { endsAt: 's2' }), robot('s3', { endsAt: 's2' }), far]
    expect(clashesOf(game, blind)).toEqual([{ kind: 'end', partners: [0, 1], distance: 0, touching: 0.8 }])
  })

  test('that take more from a source than lies there are named all together; an endless source has enough', () => {
    const takes = (source: string, count: number) => ({ takes: [{ source, count }] })
    // The raft holds 8 at the start.
    const three = [
      robot('s1', takes('raft', 3)),
      robot('s2', { ...takes('raft', 3), endsAt: 's2' }),
      robot('s3', takes('raft', 3)),
    ]
    expect(clashesOf(game, three)).toEqual([
      { kind: 'pieces', partners: [0, 1, 2], source: 'raft', wanted: 9, stock: 8 },
    ])
    expect(clashesOf(game, [...three.slice(0, 2), robot('s3', takes('raft', 2))])).toEqual([])
    expect(
      clashesOf(
        game,
        ['s1', 's2', 's3'].map((start) => robot(start, takes('slipway', 50))),
      ),
    ).toEqual([])
  })
})
