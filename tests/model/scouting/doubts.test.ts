import { describe, expect, it } from 'vitest'
import { seededEvent } from '../../../seed/event/index.ts'
import { game } from '../../../seed/game.ts'
import { type Doubt, doubtsOf } from '../../../src/model/scouting/doubts/index.ts'
import { robustSd } from '../../../src/model/scouting/doubts/spread.ts'
import type { Watched } from '../../../src/model/scouting/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { offBy, planted, swappedGoals, type World, watching, worldOf } from './doubtsWorld.ts'

const doubtsIn = ({ matches, results, watched }: World): Doubt[] => doubtsOf({ game, matches, results, watched }).doubts

describe('the demo event', () => {
  const { matches, results, records } = seededEvent()
  const watched = records.flatMap((row): Watched[] =>
    row.kind === 'observation' ? [{ observation: row.body, team: row.body.team }] : [],
  )
  const { doubts } = doubtsOf({ game, matches, results, watched })
  const red = matches.find(({ id }) => id === 'qualification-17')!.red[0]

  it('doubts the record with two goals swapped first, and shows the evidence', () => {
    const [first] = doubts
    expect(first).toMatchObject({ kind: 'swapped', match: 'qualification-17', alliance: 'red', teams: [red.team] })
    if (first?.kind !== 'swapped') throw new Error('no swap')
    expect(first.goals).toEqual(['piers', 'gantry'])
    const result = results.find(({ match }) => match === 'qualification-17')!.red
    const [piers, gantry] = first.evidence
    expect([piers!.official, gantry!.official]).toEqual([result.pieces!['piers'], result.pieces!['gantry']])
    // What is too much at one goal is too little at the other.
    expect(piers!.official - piers!.scouted).toBe(gantry!.scouted - gantry!.official)
  })

  it('doubts no other record, as all others agree with the officials', () => {
    expect(doubts).toHaveLength(1)
  })

  it('says the same whatever the order in which records came', () => {
    expect(doubtsOf({ game, matches, results, watched: watched.toReversed() }).doubts).toEqual(doubts)
  })

  it('has nothing to say without results', () => {
    expect(doubtsOf({ game, matches, results: [], watched }).doubts).toEqual([])
    expect(doubtsOf({ game, matches: [], results: [], watched: [] }).doubts).toEqual([])
  })
})

describe('the spread', () => {
  it('is that of a normal sample where most are, whatever a few say', () => {
    // Quantiles 0.05, 0.15 … of a normal of standard deviation 10. Four of ten are nearer than 6.5, two of them 6.5 to 7.5: the
    // median of grouped values is 7 where the plain one is 6.745.
    const offs = [-16.45, -10.36, -6.745, -3.853, -1.257, 1.257, 3.853, 6.745, 10.36, 16.45]
    expect(robustSd(offs, 1)).toBeCloseTo(1.4826 * 7, 9)
    expect(robustSd([...offs.slice(1), 400], 1)).toBeLessThan(13)
  })

  it('is half a piece where everything agrees', () => {
    expect(robustSd([0, 0, 0, 0, 0, 1], 1)).toBe(0.5)
    expect(robustSd([], 1)).toBe(0.5)
  })
})

describe('one wrong record among honest ones', () => {
  const world = worldOf(31, { matches: 40 })
  const at = 100
  const { match, id } = world.watched[at]!.observation

  it('that counts eight too many is off, with the pieces side by side', () => {
    const doubts = doubtsIn(planted(world, (each, i) => (i === at ? offBy(each, 'piers', 8) : each)))
    const own = doubts.find((doubt) => doubt.match === match && doubt.records.includes(id))
    expect(own).toBeDefined()
    expect(own!.size).toBeGreaterThan(4)
  })

  it('is not held against the result where a robot of its side was not watched', () => {
    const wrong = planted(world, (each, i) => (i === at ? offBy(each, 'piers', 8) : each))
    const gap = { ...wrong, watched: wrong.watched.filter((_, i) => i !== at + 1) }
    expect(doubtsIn(gap).some((doubt) => doubt.records.includes(id))).toBe(false)
  })

  it('no longer counts once a lead chose another record of the robot, and disagrees with it before', () => {
    const wrong = offBy(world.watched[at]!, 'piers', 8)
    const second = { ...wrong, observation: { ...wrong.observation, id: 'second', scout: 'someone else' } }
    const watched = [...world.watched, second]
    const told = doubtsOf({ game, ...world, watched }).doubts.find(({ kind }) => kind === 'disagree')
    expect(told).toMatchObject({ records: [id, 'second'], goal: 'piers' })
    if (told?.kind !== 'disagree') throw new Error('no disagreement')
    expect(told.high - told.low).toBe(8)
    const choices = [{ match: match!, team: wrong.team, record: id }]
    const settled = doubtsOf({ game, ...world, watched, choices }).doubts
    expect(settled.filter(({ records }) => records.includes(id) || records.includes('second'))).toEqual([])
  })

  it('of a play that was voided is held against nothing', () => {
    const wrong = planted(world, (each, i) => (i === at ? offBy(each, 'piers', 8) : each))
    const voiding = { ...world.matches.find((each) => each.id === match)!, id: 'again', play: 2, voids: match! }
    expect(doubtsIn({ ...wrong, matches: [...wrong.matches, voiding] }).some((doubt) => doubt.match === match)).toBe(
      false,
    )
  })
})

describe('a scout who writes down two pieces too few at a goal', () => {
  it('is told, with how many it is per record', () => {
    const world = planted(worldOf(32, { matches: 60 }), (each) =>
      each.observation.scout === 'scout 4' ? offBy(each, 'piers', -2) : each,
    )
    const scouts = doubtsIn(world).flatMap((doubt) => (doubt.kind === 'scout' ? [doubt] : []))
    expect(scouts).toMatchObject([{ scout: 'scout 4', habit: 'offBy', goal: 'piers' }])
    // Where a robot placed fewer than two, fewer are missing.
    if (scouts[0]?.habit !== 'offBy') throw new Error('another habit')
    expect(scouts[0].perRecord).toBeGreaterThan(1)
    expect(scouts[0].perRecord).toBeLessThan(2.5)
  })
})

describe('agreement', () => {
  it('is α of the pieces, and κ of finishes for two who share ten robots', () => {
    const world = worldOf(5, { matches: 20, scouts: 6 })
    const twice = world.watched.slice(0, 24).map(({ observation, team }, i): Watched => {
      const finish = i === 3 ? { attempted: null, achieved: null } : observation.finish!
      return { team, observation: { ...observation, id: `again ${i}`, scout: 'second', finish } }
    })
    const first = world.watched.map(({ observation, team }) => ({
      team,
      observation: { ...observation, scout: 'first' },
    }))
    const { agreement } = doubtsOf({ game, ...world, watched: [...first, ...twice] })
    expect(agreement.goals.map(({ alpha }) => alpha)).toEqual([1, 1, expect.toSatisfy((x) => x === null || x === 1)])
    expect(agreement.pairs).toHaveLength(1)
    expect(agreement.pairs[0]).toMatchObject({ scouts: ['first', 'second'], shared: 24 })
  })
})

// Issue 7's measure "Planted errors", on events of other seeds than those by which the limits were chosen. The short form asks of fewer
// events what chance leaves of the same figures: bands of three standard errors below (or above) them.
describe('errors planted among 600 records of honest scouts', () => {
  const events = inLongForm ? 100 : 10
  const worlds = Array.from({ length: events }, (_, e) => 50_000 + e)
  const least = (share: number, n: number) => share - (inLongForm ? 0 : 3 * Math.sqrt((share * (1 - share)) / n))

  it('tell on at most two honest records in an event', () => {
    const told = worlds.map((seed) => doubtsIn(worldOf(seed)).length)
    const mean = told.reduce((sum, n) => sum + n, 0) / events
    if (inLongForm) console.info(`false doubts in an event: ${mean}`)
    expect(mean).toBeLessThanOrEqual(2 + (inLongForm ? 0 : 3 * Math.sqrt(2 / events)))
  })

  it('are found: another robot watched, and counts off by five', () => {
    let [robots, found, counts, off] = [0, 0, 0, 0]
    for (const seed of worlds.slice(0, inLongForm ? 100 : 6)) {
      const world = worldOf(seed + 1000)
      const { draw } = world
      // Five of each, in ten matches apart.
      const places = new Map(
        Array.from({ length: 10 }, (_, k) => [(k * 10 + draw.below(10)) * 6 + draw.below(6), k % 2 === 0] as const),
      )
      const wrong = planted(world, (each, i) => {
        const robot = places.get(i)
        if (robot === undefined) return each
        const first = i - (i % 6)
        if (robot) return watching(each, world.robots[first + ((i - first + 1 + draw.below(5)) % 6)]!, draw)
        return offBy(each, draw.next() < 0.5 ? 'piers' : 'gantry', 5)
      })
      const doubts = doubtsIn(wrong)
      for (const [i, robot] of places) {
        const { id } = world.watched[i]!.observation
        const about = doubts.filter((doubt) => doubt.match !== null && doubt.records.includes(id))
        if (robot) [robots, found] = [robots + 1, found + Number(about.some(({ kind }) => kind === 'wrongRobot'))]
        else [counts, off] = [counts + 1, off + Number(about.length > 0)]
      }
    }
    if (inLongForm) console.info(`wrong robot ${found} of ${robots}, counts ${off} of ${counts}`)
    expect(found / robots).toBeGreaterThanOrEqual(least(0.8, robots))
    expect(off / counts).toBeGreaterThanOrEqual(least(0.8, counts))
  })

  // The scout's five records are among those of twelve from the first match on, or begin in the middle of the event.
  it.each(inLongForm ? [0, 50] : [0])(
    'name a scout who swaps two goals from match %i on after five of its records',
    (from) => {
      let named = 0
      let others = 0
      for (const seed of worlds) {
        const world = worldOf(seed + 2000)
        let [count, last] = [0, 0]
        const wrong = planted(world, (each, i) => {
          if (each.observation.scout !== 'scout 3' || i < from * 6 || count === 5) return each
          count++
          last = Math.floor(i / 6)
          return swappedGoals(each)
        })
        const matches = wrong.matches.slice(0, last + 1)
        const known = new Set(matches.map(({ id }) => id))
        const watched = wrong.watched.filter(({ observation }) => known.has(observation.match!))
        const scouts = doubtsIn({ ...wrong, matches, watched }).flatMap((doubt) =>
          doubt.kind === 'scout' ? [doubt] : [],
        )
        if (scouts.some(({ scout, habit }) => scout === 'scout 3' && habit === 'swaps')) named++
        others += scouts.filter(({ scout }) => scout !== 'scout 3').length
      }
      if (inLongForm) console.info(`named ${named} of ${events} from match ${from} on, others ${others}`)
      expect(named / events).toBeGreaterThanOrEqual(least(0.9, events))
    },
  )
})
