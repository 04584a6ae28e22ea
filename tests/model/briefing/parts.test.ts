import { expect, test } from 'vitest'
import { callsOf } from '../../../src/model/briefing/calls.ts'
import { factsOf } from '../../../src/model/briefing/facts.ts'
import { bestLineUps } from '../../../src/model/briefing/lineUps.ts'
import type { BriefingRequest, PlayedVersion, PlayVersions, Version } from '../../../src/model/briefing/types.ts'
import { asSeen, candidatesOf, optionsOf } from '../../../src/model/briefing/ways.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { observed, observedGame } from './robots.ts'

const request: BriefingRequest = {
  ...{ game: observedGame, seed: 1, slowing: 0.25 },
  ours: ['A', 'B', 'C'].map((id) => observed(id)),
  theirs: ['D', 'E', 'F'].map((id) => observed(id)),
}

/** Matches whose leads are known: how the search goes about them is looked at, not what is played. */
const known =
  (
    margin: (version: Version, match: number) => number,
    met: (match: number, robot: number) => number = () => 0,
  ): PlayVersions =>
  async (versions, { from, to }) =>
    versions.map(
      (version): PlayedVersion => ({
        margins: Float64Array.from({ length: to - from }, (_, k) => margin(version, from + k)),
        rankingPoints: new Float64Array(to - from),
        met: Uint16Array.from({ length: 6 * (to - from) }, (_, k) => met(from + Math.floor(k / 6), k % 6)),
        sums: [],
      }),
    )

const noise = (match: number) => new Uniforms(7, [match]).next() - 0.5

test('A robot may play as it was seen, or each goal alone that it is often at; sixteen line-ups are played, as seen among them', () => {
  const { all, chosen } = candidatesOf(request)
  // Each of ours: both goals, or either alone.
  expect(all).toBe(27)
  expect(chosen.length).toBe(16)
  expect(chosen[0]).toEqual(asSeen)
  const goals = optionsOf(request, { ...asSeen, ways: [1, 2, 0] })
    .slice(0, 3)
    .map(({ role }) => role.goals)
  expect(goals).toEqual([['near'], ['far'], ['near', 'far']])
})

test('Who is slowed takes a quarter longer in every draw, who stands in the way scores nothing, who is absent does not come', () => {
  const [own, , third, first, second] = optionsOf(request, { ...asSeen, slowed: 0, marks: 0, absent: 2 }) as Option[]
  const times = ({ robot }: Option) => robot.habit!.draws!.map(({ time }) => time!)
  expect(times(first!)).toEqual(times(second!).map((time) => 1.25 * time))
  expect(own!.role.goals).toEqual([])
  expect(own!.role.finishes).toEqual(['dock'])
  expect(third!.robot.habit!.draws!.map(({ absent }) => absent)).toEqual([1, 1, 1, 1])
})

test('The best of all line-ups is found with what the runner-up loses, and twins count once', async () => {
  const candidates = [0, 1, 2].flatMap((a) => [0, 1, 2].map((b): Version => ({ ...asSeen, ways: [a, b, 0] })))
  // The way of the second robot changes nothing; that of the first is worth 0, 0.4 and 0.1 points.
  const worth = ({ ways: [a] }: Version) => [0, 0.4, 0.1][a]!
  const [best, second, ...others] = await bestLineUps(
    candidates,
    known((version, match) => worth(version) + noise(match)),
  )
  expect(best!.version.ways).toEqual([1, 0, 0])
  expect(second!.version.ways).toEqual([2, 0, 0])
  expect(others).toEqual([])
  expect(best!.played.margins.length).toBe(3000)
})

test('A call is the time than which neither three seconds earlier nor later is better, and tells what they cost', async () => {
  // Best at 18 s left: 0.02 points for each second squared away from it; never going loses ten points.
  const value = (call: Version['calls'][number]) =>
    call === 'never' ? -10 : call === null ? 0 : -0.02 * (call - 18) ** 2
  const play = known(({ calls }, match) => calls.reduce((sum: number, call) => sum + value(call), 0) + noise(match))
  const calls = await callsOf(request, asSeen, play)
  for (const call of calls) {
    expect(call!.at).toBe(18)
    expect(call!.early3.mean).toBeCloseTo(0.18, 9)
    expect(call!.late3.mean).toBeCloseTo(0.18, 9)
  }
  // Where going is worth nothing, none is called; a robot without a finish has no call at all.
  const worthless = known((_, match) => noise(match))
  const without = { ...request, ours: [observed('A', { finish: {} }), ...request.ours.slice(1)] }
  const none = await callsOf(without, asSeen, worthless)
  expect(none[0]).toBeNull()
  expect(none.slice(1).map((call) => call!.at)).toEqual([null, null])
})

test('A number that makes the other line-up better is told with where that begins, and one that does not is not', async () => {
  // The first opponent's second half of draws is quick: then, and only then, the other line-up wins.
  const theirs = [observed('D', { draws: [0.7, 0.8, 1.2, 1.3].map((time) => ({ time })) }), ...request.theirs.slice(1)]
  const met = (match: number) => match % 4
  const version = (a: number): Version => ({ ...asSeen, ways: [a, 0, 0] })
  const play = known(({ ways: [a] }, match) => ((a === 0) === met(match) >= 2 ? 1 : -1), met)
  const [best, second] = await play([version(0), version(1)], { from: 0, to: 4000 })
  const standings = [
    { version: version(0), played: best! },
    { version: version(1), played: second! },
  ]
  const facts = await factsOf({ ...request, theirs }, standings, play)
  const numbers = facts.filter(({ kind }) => kind === 'number')
  expect(numbers).toMatchObject([{ team: 'D', what: 'pace', side: 'below', difference: { mean: 1 } }])
  // Nothing of who is missing changes anything here: both win half of their matches.
  expect(facts.filter((fact) => fact.kind === 'absent' && fact.changes)).toEqual([])
})
