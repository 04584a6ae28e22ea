import { beforeAll, describe, expect, test } from 'vitest'
import { game as breakwater } from '../../../seed/game.ts'
import { optionOf } from '../../../seed/index.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { placeOf } from '../../../src/model/field/places.ts'
import { symmetricImage } from '../../../src/model/field/symmetry.ts'
import { along, momentOf, type Reel, reelOf } from '../../../web/screens/match/replay.ts'
import { sampled } from '../../../web/worker/match.ts'
import type { Lineup, SampledMatches } from '../../../web/worker/protocol.ts'

/** The season with bonuses that pay points, too. */
const game = { ...breakwater, bonuses: breakwater.bonuses.map((bonus) => ({ ...bonus, points: 5 })) }

/** With fouls, sometimes left on the start, and adjusted by hand; some stop on the way. */
const plain = (id: string): Option => {
  const option = optionOf(id)
  const { robot } = option
  return {
    ...option,
    adjust: [{ label: 'The crowd’s buoy', points: 1.5, rankingPoints: 0 }],
    robot: {
      ...robot,
      autos: robot.autos.map((auto) => ({ ...auto, leaves: 0.7 })),
      fouls: { minorPerMatch: 1, majorPerMatch: 0.5 },
      reliability: { absent: 0, stops: robot.id === 'puffin' ? 0.5 : 0 },
    },
  }
}
const [shearwater, puffin] = [plain('shearwater-best'), plain('puffin-best')]
const lineup: Lineup = { ours: [shearwater, puffin, puffin], theirs: [puffin, shearwater, puffin] }
const { auto, pause, teleop } = game.clock
const end = auto + pause + teleop

describe('a replay', () => {
  let found: SampledMatches
  let reels: Reel[]
  beforeAll(() => {
    found = sampled({ game, level: 'local', seed: 3, lineup })
    reels = Object.values(found.samples).map((timeline) => reelOf(game, lineup, { timeline, ways: found.ways }))
  })

  test('shows at the end the score of the match: leaving, pieces, sets, holding, finishes, fouls, bonuses, adjustments', () => {
    for (const reel of reels) expect(momentOf(reel, end).points).toEqual(reel.timeline.score)
    const told = new Set(reels.flatMap(({ timeline }) => timeline.events.map(({ kind }) => kind)))
    for (const kind of ['leaves', 'fouls', 'places', 'finishes'] as const) expect(told).toContain(kind)
    expect(reels.some(({ timeline }) => timeline.atEnd.ours.bonuses + timeline.atEnd.theirs.bonuses > 0)).toBe(true)
  })

  test('takes no points away as time goes on, and shows before the end all but what comes there', () => {
    for (const reel of reels) {
      const { events, atEnd, score } = reel.timeline
      const fouls = (by: (robot: number) => boolean) =>
        events.reduce((sum, event) => {
          if (event.kind !== 'fouls' || !by(event.robot)) return sum
          return sum + game.fouls.minor * event.minor + game.fouls.major * event.major
        }, 0)
      const late = {
        ours: atEnd.ours.bonuses + atEnd.ours.adjusted + fouls((robot) => robot >= 3),
        theirs: atEnd.theirs.bonuses + atEnd.theirs.adjusted + fouls((robot) => robot < 3),
      }
      const before = momentOf(reel, end - 1e-6).points
      for (const side of ['ours', 'theirs'] as const)
        expect(Math.abs(score[side] - late[side] - before[side])).toBeLessThanOrEqual(1)
      let last = { ours: 0, theirs: 0 }
      for (let time = 0; time <= end; time += 5) {
        const { points } = momentOf(reel, time)
        expect(points.ours).toBeGreaterThanOrEqual(last.ours)
        expect(points.theirs).toBeGreaterThanOrEqual(last.theirs)
        last = points
      }
    }
  })

  test('moves no robot quicker than it can drive, from the first second of teleop to the last', () => {
    const step = 0.25
    let moved = 0
    for (const reel of reels) {
      let before = momentOf(reel, auto).robots
      for (let time = auto + step; time <= end; time += step) {
        const after = momentOf(reel, time).robots
        for (const [robot, { at }] of after.entries()) {
          const from = before[robot]!.at
          const way = Math.hypot(at[0] - from[0], at[1] - from[1])
          moved += way
          expect(way).toBeLessThanOrEqual(reel.options[robot]!.robot.drive.topSpeed * step + 1e-9)
        }
        before = after
      }
    }
    expect(moved).toBeGreaterThan(100)
  })

  test('has a robot that works at a place on one of its spots, theirs on the images of ours', () => {
    const [reel] = reels
    let checked = 0
    for (const event of reel!.timeline.events) {
      if (event.kind !== 'works') continue
      const { at, doing, place } = momentOf(reel!, event.at + 1e-6).robots[event.robot]!
      if (doing !== 'works') continue
      const spots = [...game.sources, ...game.goals, ...game.finishes].find(({ id }) => id === place)!.spots
      const wanted = spots.map((spot) => (event.robot < 3 ? spot.at : symmetricImage(game.field, spot.at)))
      const off = Math.min(...wanted.map(([x, y]) => Math.hypot(x - at[0], y - at[1])))
      expect(off).toBeLessThan(1e-6)
      checked++
    }
    expect(checked).toBeGreaterThan(50)
  })

  test('leaves a robot that stopped where it was', () => {
    const stopped = reels.flatMap((reel) =>
      reel.timeline.events.flatMap((event) => (event.kind === 'stops' ? [{ reel, event }] : [])),
    )
    expect(stopped.length).toBeGreaterThan(0)
    for (const { reel, event } of stopped) {
      const { at } = momentOf(reel, event.at).robots[event.robot]!
      const last = momentOf(reel, end).robots[event.robot]!
      expect(last.at).toEqual(at)
      expect(last.doing).toBe('stops')
    }
  })

  test('stands on the start before anything has moved', () => {
    const { robots } = momentOf(reels[0]!, 0)
    expect(robots[0]!.at).toEqual(placeOf(game, shearwater.start)!.at)
    expect(robots[4]!.at).toEqual(symmetricImage(game.field, placeOf(game, shearwater.start)!.at))
    expect(robots.map(({ doing }) => doing)).toEqual(Array(6).fill('autonomous'))
  })
})

test('a share of a way is a share of its length', () => {
  const way: [number, number][] = [
    [0, 0],
    [3, 0],
    [3, 1],
  ]
  expect(along(way, 0)).toEqual([0, 0])
  expect(along(way, 0.5)).toEqual([2, 0])
  expect(along(way, 0.875)).toEqual([3, 0.5])
  expect(along(way, 2)).toEqual([3, 1])
  expect(along([], 0.5)).toBeNull()
})
