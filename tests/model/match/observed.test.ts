import { describe, expect, it, test } from 'vitest'
import type { Habit, HabitDraw } from '../../../src/model/documents/habit.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { hashOf } from '../../../src/model/match/habits.ts'
import { simulate } from '../../../src/model/match/index.ts'
import { matchReport } from '../../../src/model/match/report.ts'
import { Matches } from '../../../src/model/match/run.ts'
import { Roster } from '../../../src/model/match/setup.ts'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { game, optionNamed } from '../reference.ts'
import { away, drawn, eventsOf, playing, seen } from './observed.ts'

/** Where each trip went and with how many pieces, over some matches. */
function tripsOf(option: Option, matches: number): { place: string; load: number }[][] {
  const simulator = playing({ 0: option })
  return Array.from({ length: matches }, (_, match) =>
    eventsOf(simulator, match).flatMap((event) =>
      event.kind === 'works' && event.place !== 'slipway' ? [{ place: event.place, load: event.load }] : [],
    ),
  )
}

/** A share of so many is met within 4 standard errors. */
function expectShare(times: number, of: number, share: number): void {
  expect(Math.abs(times / of - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / of))
}

describe('an observed robot', () => {
  test('goes to each goal and brings each number of pieces as often as its shares say, one trip like another', () => {
    const option = seen('a', {}, { goals: { pier: 3, lightship: 2 }, pieces: { 1: 0.3, 2: 0.7 } })
    const matches = tripsOf(option, 300)
    const trips = matches.flat()
    // 135 s of 5 s each.
    expect(trips.length).toBe(300 * 27)
    for (const [place, share] of [['pier', 0.6] as const, ['lightship', 0.4] as const])
      for (const [load, part] of [[1, 0.3] as const, [2, 0.7] as const])
        expectShare(
          trips.filter((trip) => trip.place === place && trip.load === load).length,
          trips.length,
          share * part,
        )
    const pairs = matches.flatMap((own) => own.slice(1).map((trip, k) => [trip.place, own[k]!.place]))
    expectShare(pairs.filter(([one, before]) => one === before).length, pairs.length, 0.6 ** 2 + 0.4 ** 2)
  })

  test('whose goal is full goes to one of the others by their shares', () => {
    const small: Game = {
      ...game,
      goals: game.goals.map((goal) => (goal.id === 'gantry' ? { ...goal, capacity: 1 } : goal)),
    }
    const simulator = playing(
      { 4: seen('a', {}, { goals: { gantry: 0.5, pier: 0.3, lightship: 0.2 } }) },
      { game: small },
    )
    const later: string[] = []
    for (let match = 0; match < 200; match++) {
      const places = eventsOf(simulator, match).flatMap((event) => (event.kind === 'places' ? [event.place] : []))
      const full = places.indexOf('gantry')
      expect(places.filter((place) => place === 'gantry').length).toBe(full < 0 ? 0 : 1)
      if (full >= 0) later.push(...places.slice(full + 1))
    }
    expect(later.length).toBeGreaterThan(4000)
    expectShare(later.filter((place) => place === 'pier').length, later.length, 0.6)
  })

  test('with pieces in hand and no room anywhere rests until it leaves', () => {
    const tiny: Game = {
      ...game,
      goals: game.goals.map((goal) => (goal.id === 'gantry' ? { ...goal, capacity: 1 } : goal)),
    }
    const option = seen('a', { preload: { piece: 'cask', count: 2 } }, { goals: { gantry: 1 }, departs: 30.5 })
    const events = eventsOf(playing({ 0: option }, { game: tiny }))
    // The second piece of the load is lost; elapsed 15 + 135 − 30.5.
    expect(events.map(({ kind, at }) => [kind, at])).toEqual([
      ['drives', 15],
      ['works', 16],
      ['places', 17],
      ['rests', 17],
      ['drives', 119.5],
      ['works', 121.5],
      ['finishes', 123.5],
    ])
  })

  describe('leaves for its finish', () => {
    const departures = (option: Option, others: { [seat: number]: Option } = {}) =>
      eventsOf(playing({ 0: option, ...others })).flatMap((event) =>
        event.kind === 'drives' && event.robot === 0 && ['drydock', 'davit'].includes(event.place)
          ? [[event.at, event.place]]
          : [],
      )
    const both = {
      finish: {
        drydock: { whole: { kind: 'fixed', seconds: 4 }, success: 1, otherwise: null },
        davit: { whole: { kind: 'fixed', seconds: 8 }, success: 0.5, otherwise: 'drydock' },
      },
    } as const

    // It decides at 15, 18, 20, 23, … s, free after each leg of 3 s and 2 s.
    it.each([
      ['at its time, if it is free then', 22, 128],
      ['when it is free next', 21, 130],
      ['with pieces in hand', 21.9, 130],
    ])('%s', (_, departs, at) => {
      expect(departures(seen('a', {}, { departs }))).toEqual([[at, 'drydock']])
    })

    test('which pays most, counting how often it succeeds', () => {
      // 12 · 0.5 + 3 · 0.5 = 7.5 against 3.
      expect(departures(seen('a', both, { departs: 22 }))).toEqual([[128, 'davit']])
      const rare = { ...both.finish, davit: { ...both.finish.davit, success: 0.1, otherwise: null } }
      expect(departures(seen('a', { finish: rare }, { departs: 22 }))).toEqual([[128, 'drydock']])
    })

    test('when it is called, where its way to play calls it, and never where that forbids it', () => {
      const option = seen('a', {}, { departs: 22 })
      expect(departures({ ...option, finish: { mode: 'always', at: 40 } })).toEqual([[110, 'drydock']])
      expect(departures({ ...option, finish: { mode: 'skip' } })).toEqual([])
    })

    test('and goes on with its trips where every finish is taken', () => {
      const only = seen('a', {}, { departs: 22 })
      const one: Game = { ...game, finishes: game.finishes.map((finish) => ({ ...finish, slots: 1 })) }
      const early = seen('b', {}, { departs: 60 })
      const simulator = playing({ 0: only, 1: early }, { game: one })
      const events = eventsOf(simulator).filter(({ robot }) => robot === 0)
      expect(events.some((event) => event.kind === 'finishes')).toBe(false)
      // 27 trips of 5 s, the last until the buzzer.
      expect(events.filter(({ kind }) => kind === 'places').length).toBe(27)
    })
  })

  describe('at sources that run empty', () => {
    /** One piece at the raft, one more at 20, 40, … s. */
    const sparse: Game = {
      ...game,
      sources: game.sources.map((source) =>
        source.id === 'raft' ? { ...source, slots: 2, stock: 1, restock: { every: 20, size: 1 } } : source,
      ),
    }
    const raft = (seconds: number) => ({
      raft: { whole: { kind: 'fixed', seconds } as const, success: 1, retry: null },
    })
    const placed = (simulator: ReturnType<typeof playing>, robot: number) =>
      eventsOf(simulator).flatMap((event) => (event.kind === 'places' && event.robot === robot ? [event.at] : []))

    test('rests until the restock', () => {
      // 15 → arrives 17, has it 19, scores 21; another until 27; then it begins at each restock: 40 + 4 + 2, …
      const simulator = playing({ 0: seen('a', { collect: raft(4) }) }, { game: sparse })
      expect(placed(simulator, 0)).toEqual([21, 27, 46, 66, 86, 106, 126, 146])
    })

    test('waits where it stands if nothing else is to be had, unless it would leave before', () => {
      const first = seen('a', { collect: raft(4) })
      // Both arrive at 17 s; one takes the piece, the other waits until 20 and scores at 20 + 2 + 2.
      const simulator = playing({ 0: first, 1: first }, { game: sparse })
      expect(placed(simulator, 1)[0]).toBe(24)
      expect(simulator.waited[1 * simulator.ground.count + 1]).toBeGreaterThanOrEqual(3)
      const leaving = seen('b', { collect: raft(4) }, { departs: 132 })
      const events = eventsOf(playing({ 0: first, 1: leaving }, { game: sparse })).filter(({ robot }) => robot === 1)
      expect(events.map(({ kind, at }) => [kind, at]).slice(0, 3)).toEqual([
        ['drives', 15],
        ['rests', 17],
        ['drives', 18],
      ])
    })

    test('goes to the other source instead', () => {
      const two = seen('b', { collect: { ...raft(4), slipway: { ...raft(6).raft } } })
      const first = seen('a', { collect: raft(4) })
      let times = 0
      const simulator = playing({ 0: first, 1: two }, { game: sparse })
      for (let match = 0; match < 40; match++) {
        const own = eventsOf(simulator, match).filter(({ robot }) => robot === 1)
        const begun = own.flatMap((event) => (event.kind === 'drives' ? [[event.place, event.at]] : []))
        expect(own.some(({ kind }) => kind === 'waits' || kind === 'rests')).toBe(false)
        if (begun[0]![0] !== 'raft') continue
        times++
        expect(begun[1]).toEqual(['slipway', 17])
      }
      // Both have pieces at the beginning, so that it chooses each in half of the matches.
      expectShare(times, 40, 0.5)
    })
  })

  test('has times without the waiting that was observed with them', () => {
    const option = seen('a', {}, { unhindered: { slipway: 0.5, pier: 0.75 } })
    const [first] = eventsOf(playing({ 0: option })).filter(({ kind }) => kind === 'places')
    expect(first!.at).toBe(15 + 1.5 + 1.5)
  })
})

describe('what is believed about a team', () => {
  const points = (robots: { [seat: number]: Option }, seat: number, matches = 300) => {
    const simulator = playing(robots)
    return Array.from({ length: matches }, (_, match) => {
      simulator.play(match)
      return simulator.points[seat] as number
    })
  }
  const believed = (team: string, draws: HabitDraw[]) => seen(team, {}, { draws } as Partial<Habit>)
  const speeds = [0.8, 0.9, 1, 1.15, 1.3, 1.6]

  test('is the same in a match wherever it sits and with whomever, and not what another team meets', () => {
    const team = believed(
      'a',
      speeds.map((time) => ({ time })),
    )
    const other = believed(
      'b',
      speeds.map((time) => ({ time })),
    )
    const alone = points({ 0: team }, 0)
    expect(new Set(alone).size).toBe(speeds.length)
    expect(points({ 2: team, 0: other, 4: optionNamed('gannet-best') }, 2)).toEqual(alone)
    expect(points({ 5: team }, 5)).toEqual(alone)
    const others = points({ 0: other }, 0)
    expect(others).not.toEqual(alone)
    for (const value of new Set(alone))
      expectShare(others.filter((own) => own === value).length, 300, 1 / speeds.length)
  })

  test('that is better in every draw never scores less by the same luck', () => {
    const draws = (factor: number) =>
      believed(
        'a',
        speeds.map((time) => ({ time: factor * time })),
      )
    const slow = points({ 0: draws(1) }, 0)
    const quick = points({ 3: draws(0.9) }, 3)
    expect(quick.every((own, match) => own >= (slow[match] as number))).toBe(true)
    expect(quick.some((own, match) => own > (slow[match] as number))).toBe(true)
  })

  test('spreads scores by the law of total variance', () => {
    const all = drawn('a')
    const { habit } = all.robot
    const { draws, ...rest } = habit as Habit & { draws: HabitDraw[] }
    const play = (option: Option, replicates: number, seed: number) => {
      const nobody = away(seen('nobody'))
      const report = simulate({
        game: { ...game, sets: [], bonuses: [] },
        ours: [option, nobody, nobody],
        theirs: [nobody, nobody, nobody],
        replicates,
        seed,
        checked: true,
      })
      return momentsOf(report.distributions.ours, replicates)
    }
    const mixed = play(all, 12_000, 1)
    const single = draws.map((draw, k) =>
      play({ ...all, robot: { ...all.robot, habit: { ...rest, draws: [draw] } } }, 4000, 10 + k),
    )
    const share = 1 / single.length
    const mean = single.reduce((sum, each) => sum + share * each.mean, 0)
    const within = single.reduce((sum, each) => sum + share * each.variance, 0)
    const between = single.reduce((sum, each) => sum + share * (each.mean - mean) ** 2, 0)
    const error = Math.hypot(
      mixed.varianceError,
      ...single.map((each) => share * each.varianceError),
      ...single.map((each) => share * 2 * (each.mean - mean) * each.meanError),
    )
    expect(Math.abs(mixed.variance - (within + between))).toBeLessThan(4 * error)
    expect(Math.abs(mixed.mean - mean)).toBeLessThan(
      4 * Math.hypot(mixed.meanError, ...single.map((each) => share * each.meanError)),
    )
    // Without what is believed the forecast would be visibly narrower.
    expect(between).toBeGreaterThan(8 * error)
  })
})

/** Mean and variance of a distribution found in so many matches, with their standard errors. */
function momentsOf(distribution: MatchReport['distributions']['ours'], count: number) {
  const about = (center: number, power: number) =>
    distribution.reduce((sum, [value, p]) => sum + p * (value - center) ** power, 0)
  const mean = about(0, 1)
  const variance = about(mean, 2)
  const varianceError = Math.sqrt((about(mean, 4) - variance ** 2) / count)
  return { mean, variance, meanError: Math.sqrt(variance / count), varianceError }
}

describe('designed robots', () => {
  const roster = new Roster(game)
  const play = (ours: readonly Option[], theirs: readonly Option[], matches: number) => {
    const setup = roster.setup(ours, theirs)
    return matchReport(setup.ground, new Matches(setup, { seed: 3, checked: true }).play(0, matches), 3)
  }
  const ours = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionNamed)
  const two = ['cormorant-best', 'petrel-defender'].map(optionNamed)

  test('play to the last bit as without the observed one that stays away', () => {
    const report = (third: Option) => {
      const { robots, ...rest } = play(ours, [...two, third], 500)
      return { rest, robots: robots.slice(0, 5) }
    }
    const absent = report(away(optionNamed('gannet-keeper')))
    expect(report(away(seen('a')))).toEqual(absent)
    expect(report(drawn('a'))).not.toEqual(absent)
  })

  test('and observed ones together keep the laws of conservation', () => {
    const marking = { ...drawn('d'), role: { ...drawn('d').role, defend: { mark: 1 as const, from: 90, until: 30 } } }
    const report = play([drawn('a'), ours[1]!, drawn('b')], [two[0]!, marking, drawn('a')], 2000)
    expect(report.robots[4]!.defending.mean).toBeGreaterThan(40)
    for (const robot of [0, 2, 5]) expect(report.robots[robot]!.points.mean).toBeGreaterThan(10)
  })
})

test('names become numbers as the hash’s own test vectors say', () => {
  /** FNV-1a of 32 bits: the draft's appendix prints 'a' → e40c292c and 'foobar' → bf9cf968 (from memory). */
  expect([hashOf(''), hashOf('a'), hashOf('foobar')]).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968])
})
