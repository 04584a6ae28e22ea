import { expect, test } from 'vitest'
import {
  type AgreedPlan,
  type Briefing,
  brokenIn,
  changesBetween,
  coachCopy,
  endingsOf,
  lastCallOf,
  partnerCopy,
  partnerFields,
  VersionPlayer,
} from '../../../src/model/briefing/index.ts'
import { asSeen } from '../../../src/model/briefing/ways.ts'
import { simulate } from '../../../src/model/match/index.ts'
import type { Observation } from '../../../src/model/scouting/types.ts'
import { match, result } from '../event/matches.ts'
import { agreed } from './plans.ts'
import { observed, observedGame } from './robots.ts'

const mean = (value: number) => ({ mean: value, standardError: 0.1 })
const gains = { win: mean(0.1), points: mean(3) }

const report = simulate({
  ...{ game: observedGame, replicates: 500, seed: 1 },
  ours: ['A', 'B', 'C'].map((id) => observed(id)),
  theirs: ['D', 'E', 'F'].map((id) => observed(id)),
})

/** A briefing with a number of its own in every place that rates a robot. */
const briefing = (at: number, goals = ['near', 'far']): Briefing => ({
  ...{ replicates: 5000, seed: 1, slowing: 0.25 },
  jobs: ['A', 'B', 'C'].map((team) => ({
    ...{ team, start: 'left', sources: ['in'], goals, finish: 'dock', lane: [[1, 1] as [number, number]] },
    call: { at, early3: mean(0.31), late3: mean(0.77) },
  })),
  opponents: [{ team: 'D', goals: ['near'], finish: null }],
  report,
  lineUps: [{ goals: [['near'], ['near'], ['far']], win: mean(0.6), loses: null }],
  considered: { candidates: 27, played: 16 },
  slowings: [{ team: 'D', gains }],
  threat: { team: 'D', goal: 'near', pieces: 7, gains, markers: [{ team: 'A', gains }], marker: null },
  contention: [{ place: 'in', team: 'A', seconds: mean(2) }],
  facts: [{ kind: 'absent', team: 'A', changes: true, difference: gains }],
})

const namesIn = (value: unknown): string[] =>
  Array.isArray(value)
    ? value.flatMap(namesIn)
    : value !== null && typeof value === 'object'
      ? Object.entries(value).flatMap(([name, inner]) => [name, ...namesIn(inner)])
      : []

test('A partner’s copy has the fields of its list and no other, so that nothing in it rates a partner', () => {
  const copy = partnerCopy(briefing(12))
  expect([...new Set(namesIn(copy))].sort()).toEqual([...partnerFields].sort())
  // Where numbers stand at all, they are a place on the field or the time that is called.
  const numbers = JSON.stringify({ ...copy, jobs: copy.jobs.map(({ lane: _, ...job }) => job) }).match(/[\d.]+/g)
  expect(new Set(numbers)).toEqual(new Set(['12']))
})

test('A coach’s copy has no chance in it, and says what three seconds cost', () => {
  const copy = coachCopy(briefing(12), null)
  expect(namesIn(copy).filter((name) => /win|chance|probab|error/i.test(name))).toEqual([])
  expect(copy.jobs[0]!.call).toEqual({ at: 12, early3: 0.31, late3: 0.77 })
})

test('What another briefing says otherwise is told, and nothing where the plan stands', () => {
  expect(changesBetween(briefing(12), briefing(12))).toEqual([])
  const after = briefing(18, ['far', 'near'])
  after.threat = { ...after.threat, team: 'E', marker: 'B' }
  const told = changesBetween(briefing(12), after)
  expect(told.filter((change) => 'team' in change && change.team === 'A')).toEqual([
    { kind: 'goals', team: 'A', goals: ['far', 'near'] },
    { kind: 'call', team: 'A', from: 12, to: 18 },
  ])
  expect(told.slice(-2)).toEqual([
    { kind: 'threat', team: 'E' },
    { kind: 'marker', team: 'B' },
  ])
})

test('The last call is that of our last match with a plan, beside what was seen and the result', () => {
  const matches = [match(1, 'A B C', 'D E F'), match(2, 'A B C', 'D E F'), match(3, 'A B C', 'D E F')]
  const [first, , third] = matches.map(({ id }) => id) as [string, string, string]
  const plan = (call: number, at: string): AgreedPlan => ({ id: at, agreedAt: at, ...agreed(first, call) })
  const seen = (team: string, more: Partial<Observation>) => ({
    observation: { match: first, team, subject: 'robot', ...more } as Observation,
    team,
  })
  const clock = { auto: 15, pause: 2, teleop: 120 }
  const endings = endingsOf(clock, [
    seen('A', { departedAt: 122, finish: { attempted: 'dock', achieved: 'dock' } }),
    seen('B', { timeline: [{ elapsed: 130.5, what: 'left' }], finish: { attempted: 'dock', achieved: null } }),
  ])
  const last = lastCallOf({
    ...{ matches, endings, own: ['A'], before: third, results: [result(first, [61, 58])] },
    // The newer one is in force.
    plans: [plan(20, '1'), plan(12, '2')],
  })
  expect(last).toEqual({
    match: first,
    score: { ours: 61, theirs: 58 },
    robots: [
      // Elapsed 122 of 137 s.
      { team: 'A', called: 12, left: 15, finish: 'dock' },
      { team: 'B', called: 12, left: 6.5, finish: null },
      { team: 'C', called: 12, left: null },
    ],
  })
  expect(lastCallOf({ matches, endings, own: ['A'], before: first, results: [], plans: [plan(12, '1')] })).toBeNull()
})

test('What broke is told match by match, latest first, and a match without anything is left out', () => {
  const matches = [match(1, 'A B C', 'D E F'), match(2, 'A B C', 'D E F'), match(3, 'A B C', 'D E F')]
  const of = (k: number, more: Partial<Observation>) =>
    ({ match: matches[k]!.id, subject: 'robot', ...more }) as Observation
  const timeline: Observation['timeline'] = [
    { elapsed: 40, what: 'stopped' },
    { elapsed: 52, what: 'running' },
    { elapsed: 60, what: 'dropped', n: 2 },
    { elapsed: 100, what: 'stopped' },
  ]
  const found = brokenIn(matches, [
    of(0, { note: ' Chain came off ', lostSeconds: 7 }),
    of(1, {}),
    of(2, { timeline }),
    of(2, { note: 'Smoke?' }),
  ])
  const none = { absent: false, stoppedAt: null, stops: [], lostSeconds: 0, dropped: 0, notes: [] }
  expect(found).toEqual([
    { ...none, match: matches[2]!.id, stoppedAt: 100, stops: [{ from: 40, to: 52 }], dropped: 2, notes: ['Smoke?'] },
    { ...none, match: matches[0]!.id, lostSeconds: 7, notes: ['Chain came off'] },
  ])
})

test('Versions are played by the match itself: the same scores as its own report, whoever plays which part', () => {
  const ours = ['A', 'B', 'C'].map((id) => observed(id))
  const theirs = ['D', 'E', 'F'].map((id) => observed(id))
  const request = { game: observedGame, ours, theirs, seed: 3 }
  const player = new VersionPlayer({ ...request, slowing: 0.25 })
  const { margins } = player.play(asSeen, { from: 0, to: 300 })
  const { margin } = simulate({ ...request, replicates: 300 })
  expect(margins.reduce((sum, each) => sum + each, 0) / 300).toBeCloseTo(margin.mean, 9)
  const parts = [player.play(asSeen, { from: 100, to: 300 }), player.play(asSeen, { from: 0, to: 100 })]
  expect([...parts[1]!.margins, ...parts[0]!.margins]).toEqual([...margins])
})
