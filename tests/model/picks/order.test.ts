import { describe, expect, it } from 'vitest'
import { simulate } from '../../../src/model/match/index.ts'
import {
  type PickOrder,
  pickOrder,
  playRound,
  Refinement,
  refineTasks,
  roughOrder,
  roundMatches,
  Strengths,
} from '../../../src/model/picks/order/index.ts'
import { protocolOf } from '../../../src/model/picks/protocol/index.ts'
import { Playing, type RatedTeam, Sibling, samplePairings } from '../../../src/model/picks/scores/index.ts'
import { type SelectionRules, selectionAfter } from '../../../src/model/picks/selection/index.ts'
import { askOf } from '../../../src/model/picks/usual.ts'
import { normalCdf } from '../../../src/model/scouting/statistics/index.ts'
import { seen } from '../match/observed.ts'
import { game, lots, rated } from './field.ts'

const rules: SelectionRules = {
  alliances: 2,
  size: 3,
  serpentine: true,
  captainsInvitable: false,
  afterDeclining: 'captain',
}
const sd = 12
const strengthsOf = (teams: readonly RatedTeam[], each = 150) =>
  new Strengths(new Sibling(game, teams, lots(teams, { pairings: samplePairings({ teams, seed: 5 }), each, sd })))
const orderOf = (order: PickOrder) => order.choices.map(({ team }) => team).join(' ')

describe('a pick order worked out by hand', () => {
  // Points on the pier: a 40, b 36, c 34, d 30, e 20, f 18, g 10, h 8. Captains a and b; a invites one, b two, a one.
  const points = { a: 40, b: 36, c: 34, d: 30, e: 20, f: 18, g: 10, h: 8 }
  const seeds = Object.keys(points)
  const teams = Object.entries(points).map(([team, own]) => rated(team, { pier: own / 2 }))
  const strengths = strengthsOf(teams)
  const worked = pickOrder({ game, strengths, selection: selectionAfter(rules, seeds, []).selection, us: 'a' })
  const win = (ours: string, theirs: string) => {
    const sum = (all: string) => [...all].reduce((total, team) => total + points[team as keyof typeof points], 0)
    return normalCdf((sum(ours) - sum(theirs)) / (sd * Math.SQRT2))
  }

  it('knows who will be free at our next turn: b takes the best two meanwhile', () => {
    expect(worked.order.replacement).toBe('e')
    expect(worked.order.alliance).toEqual(['a'])
  })

  it('has gains as normal luck gives them, of alliances completed as the order says', () => {
    // With c we get e after b took d and … e? b takes d and e, so that f is left for us. And so on.
    const ends: { [team: string]: [ours: string, theirs: string] } = {
      c: ['acf', 'bde'],
      d: ['adf', 'bce'],
      e: ['aef', 'bcd'],
      f: ['afe', 'bcd'],
      g: ['age', 'bcd'],
      h: ['ahe', 'bcd'],
    }
    const base = win(...(ends.e as [string, string]))
    for (const { team, gain, win: chance, error, alliance } of worked.order.choices) {
      const [ours, theirs] = ends[team] as [string, string]
      expect([...alliance].sort().join('')).toBe([...ours].sort().join(''))
      const expected = win(ours, theirs)
      // The sibling was told of 3,600 matches: chances within 4 · 0.01.
      expect(Math.abs(chance.mean - expected)).toBeLessThan(0.04)
      expect(Math.abs(gain.mean - (expected - base))).toBeLessThan(0.04)
      expect(error).toBeLessThan(0.012)
    }
    expect(orderOf(worked.order).slice(0, 5)).toBe('c d e')
    expect(orderOf(worked.order).slice(-3)).toBe('g h')
    expect(worked.order.choices.find(({ team }) => team === 'e')).toMatchObject({ gain: { mean: 0 }, error: 0 })
  })

  it('leaves out whom we set aside, and whom we can not have', () => {
    const selection = selectionAfter(rules, seeds, [{ kind: 'declines', team: 'd' }]).selection
    const { order } = pickOrder({ game, strengths, selection, us: 'a', aside: new Set(['c']) })
    expect(orderOf(order)).not.toMatch(/[cd]/)
    // b takes c and e now.
    expect(order.replacement).toBe('f')
    // Teams that become captains before our turn can not be had: a invites b, so c moves up, and so on.
    const moving = selectionAfter({ ...rules, alliances: 3, captainsInvitable: true }, seeds, []).selection
    expect(orderOf(pickOrder({ game, strengths, selection: moving, us: 'b' }).order)).toContain('c')
    expect(orderOf(pickOrder({ game, strengths, selection: moving, us: 'c' }).order)).not.toContain('b')
  })

  it('never takes us ourselves for the replacement while we are no captain', () => {
    // a invites c, b takes d and e, a takes f. Of g, h and ourselves nobody is wanted; we are the best of them.
    for (const us of ['g', 'h']) {
      const { order } = pickOrder({ game, strengths, selection: selectionAfter(rules, seeds, []).selection, us })
      expect(order).toMatchObject({ replacement: us === 'g' ? 'h' : 'g', replacementFree: true })
      const own = order.choices.find(({ team }) => team === order.replacement)
      expect(own).toMatchObject({ gain: { mean: 0 }, error: 0 })
      expect(orderOf(order)).not.toContain(us)
    }
  })

  it('has gains against the last of the order where every team will be taken', () => {
    // Three captains and three partners leave g alone: nobody is free but we.
    const alone = selectionAfter({ ...rules, alliances: 3, size: 2 }, seeds.slice(0, 7), []).selection
    const { order } = pickOrder({ game, strengths, selection: alone, us: 'g' })
    expect(order).toMatchObject({ replacement: 'f', replacementFree: false })
    expect(orderOf(order)).toBe('d e f')
    expect(order.choices[2]).toMatchObject({ gain: { mean: 0 }, error: 0 })
    // A captain whose turn is the last, with one team left, has nobody beside it to compare with.
    const steps = ['d', 'e'].map((team) => ({ kind: 'accepts' as const, team }))
    const last = selectionAfter({ ...rules, alliances: 3, size: 2 }, seeds.slice(0, 6), steps).selection
    expect(pickOrder({ game, strengths, selection: last, us: 'c' }).order).toMatchObject({
      ...{ replacement: 'f', replacementFree: false },
    })
  })

  it('is that of the last captain before the selection, where we would be none', () => {
    const asked = (us: string, lines: Parameters<typeof protocolOf>[0] = []) =>
      askOf(protocolOf(lines), { rules, seeds: [...seeds], us })
    expect(asked('g')).toMatchObject({ supposed: true, seeds: [...'agbcdefh'] })
    expect(asked('b')).toMatchObject({ supposed: false, seeds })
    const begins = { id: 'x', line: { kind: 'begins' as const, rules, seeds }, at: '', person: null }
    expect(asked('g', [begins])).toMatchObject({ supposed: false, seeds })
    const { selection } = selectionAfter(rules, asked('g').seeds, [])
    const { order } = pickOrder({ game, strengths, selection, us: 'g' })
    // b is no captain now. Whether a leaves it to us is told apart: here it is whom we would rather have.
    expect(order.choices[0]).toMatchObject({ team: 'b' })
    expect(order.replacementFree).toBe(true)
  })

  it('has a rough order for the first moment, which says the same where nothing is uncertain', () => {
    const { selection } = selectionAfter(rules, seeds, [])
    const rough = roughOrder({ game, strengths, selection, us: 'a' })
    expect(orderOf(rough)).toBe(orderOf(worked.order))
    for (const [k, { gain }] of rough.choices.entries())
      expect(gain.mean).toBeCloseTo(worked.order.choices[k]!.gain.mean, 9)
    const aside = roughOrder({ game, strengths, selection, us: 'a', aside: new Set(['c']) })
    expect(orderOf(aside)).not.toContain('c')
  })
  it('goes on after a pick from the order before it, and says the same as one from nothing', () => {
    const { selection } = selectionAfter(rules, seeds, [{ kind: 'accepts', team: 'c' }])
    const fresh = pickOrder({ game, strengths, selection, us: 'b' }).order
    const going = pickOrder({ game, strengths, selection, us: 'b', since: worked }).order
    expect(orderOf(going)).toBe(orderOf(fresh))
    expect(fresh.choices[0]?.team).toBe('d')
  })
})

describe('what an alliance needs', () => {
  // a and b fill the gantry (12 places) by themselves; g brings more points than p, but for the same places.
  const teams = [
    rated('a', { gantry: 9, pier: 1 }),
    rated('x', { gantry: 6, pier: 8, davit: 0.5 }),
    rated('b', { gantry: 8 }),
    rated('g', { gantry: 9 }),
    rated('p', { pier: 16 }),
    rated('d', { pier: 3, davit: 0.95 }),
    rated('y', { gantry: 5, pier: 8, davit: 0.5 }),
    rated('z', { gantry: 5, pier: 7, davit: 0.5 }),
  ]
  const seeds = teams.map(({ team }) => team)
  const steps = ['b', 'y', 'z'].map((team) => ({ kind: 'accepts' as const, team }))
  const { selection } = selectionAfter(rules, seeds, steps)
  const { order } = pickOrder({ game, strengths: strengthsOf(teams), selection, us: 'a' })

  it('comes before points: whoever finds room is worth more than who brings more of what is full', () => {
    expect(teams.find(({ team }) => team === 'g')?.rating.points[0]).toBeGreaterThan(
      teams.find(({ team }) => team === 'p')?.rating.points[0] as number,
    )
    expect(orderOf(order)).toBe('p d g')
  })

  it('is told with who answers it', () => {
    const parts = order.needs.map(({ part }) => (part.kind === 'goal' ? part.goal : part.kind))
    expect(parts).toEqual(['pier', 'finishing'])
    expect(order.needs[0]?.short.mean).toBeCloseTo((2 * 23) / 3 - 1, 6)
    const answers = Object.fromEntries(order.choices.map((choice) => [choice.team, choice.answers]))
    expect(answers).toEqual({ p: [0], d: [1], g: [] })
  })
})

describe('a refined order', () => {
  // Observed robots of the reference's season that take so many seconds a trip.
  const quick = (team: string, seconds: number) =>
    seen(team, {
      collect: { slipway: { whole: { kind: 'lognormal', median: seconds, spread: 1.3 }, success: 1, retry: null } },
    })
  const seconds = { a: 6, b: 6.5, c: 6, d: 8, e: 9, f: 10, g: 11, h: 12 }
  // In the mean 9.25 s: about 135 / (s + 2) trips of one piece.
  const teams = Object.entries(seconds).map(([team, own]) => {
    return { ...rated(team, { pier: 135 / (own + 2) }), option: quick(team, own) }
  })
  const roomy = {
    ...game,
    sources: game.sources.map((source) => ({ ...source, slots: 3 })),
    goals: game.goals.map((goal) => ({ ...goal, slots: 3 })),
  }
  const strengths = strengthsOf(teams)
  const selection = selectionAfter(rules, Object.keys(seconds), []).selection
  const worked = pickOrder({ game: roomy, strengths, selection, us: 'a' })
  const playing = new Playing({ game: roomy, teams })
  const tasks = refineTasks(worked, strengths)

  it('can be told at any time, and pairs each choice with the replacement in the same luck', () => {
    const refinement = new Refinement(worked)
    expect(orderOf(refinement.order())).toBe(orderOf(worked.order))
    const some = tasks.slice(0, 3)
    for (const round of [0, 1])
      for (const task of some)
        refinement.add(task.choice, { round, outcomes: playRound(playing, task, { round, seed: 7 }) })
    const { choices } = refinement.order()
    expect(choices.map(({ simulated }) => simulated > 0)).toEqual([true, true, false, false, false, false])
    const [first] = choices
    expect(first?.simulated).toBe(2 * roundMatches)
    // Its chance is that of the simulation of matches asked directly.
    const of = (ids: readonly string[]) => ids.map((id) => teams.find(({ team }) => team === id)?.option as never)
    const place = worked.order.choices.findIndex(({ team }) => team === first?.team)
    const task = tasks.find(({ choice }) => choice === place)
    const request = { game: roomy, ours: of(task?.ours ?? []), theirs: of(task?.others[0] ?? []), seed: 7 }
    const direct = simulate({ ...request, replicates: 2 * roundMatches })
    expect(first?.win.mean).toBeCloseTo(direct.win.probability + direct.tie.probability / 2, 9)
    // Paired in the same luck: less than by two runs on their own.
    expect(first?.error).toBeLessThan(Math.hypot(direct.win.standardError, direct.win.standardError))
    expect(first?.error).toBeGreaterThan(0)
  })

  it('is the same whatever the order in which rounds come in', () => {
    const [one, other] = [new Refinement(worked), new Refinement(worked)]
    const played = tasks.flatMap((task) =>
      [0, 1].map((round) => ({ task, round, outcomes: playRound(playing, task, { round, seed: 3 }) })),
    )
    for (const { task, round, outcomes } of played) one.add(task.choice, { round, outcomes })
    for (const { task, round, outcomes } of played.toReversed()) other.add(task.choice, { round, outcomes })
    expect(other.order()).toEqual(one.order())
    const known = one.order().choices.find(({ team }) => team === worked.order.replacement)
    expect(known).toMatchObject({ gain: { mean: 0 }, error: 0 })
  })
})
