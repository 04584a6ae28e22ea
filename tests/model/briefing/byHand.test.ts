import { expect, test } from 'vitest'
import { brief } from '../../../src/model/briefing/brief.ts'
import { briefAlone, planBodyOf, type Told, VersionPlayer } from '../../../src/model/briefing/index.ts'
import { choicesOf, ownBeside } from '../../../src/model/briefing/ownLineUp.ts'
import type { BriefingRequest, Version } from '../../../src/model/briefing/types.ts'
import { optionsOf } from '../../../src/model/briefing/ways.ts'
import { observed, observedGame } from './robots.ts'

const request: BriefingRequest = {
  ...{ game: observedGame, seed: 1, slowing: 0.25 },
  ours: ['A', 'B', 'C'].map((id) => observed(id)),
  theirs: ['D', 'E', 'F'].map((id) => observed(id)),
}
const best = choicesOf(request).map((ways) => ways[0]!)

/** As `briefAlone`, with a tenth of the matches. */
function briefed(told: readonly [Told, Told, Told], marked = 1) {
  const player = new VersionPlayer(request)
  const asked: Version[] = []
  const byHand = { best, own: { told, marked } }
  const made = brief(
    request,
    {
      play: async (versions, { from, to, sums }) => {
        asked.push(...versions)
        return versions.map((version) =>
          player.play(version, { from, to: Math.max(256, to / 10), sums: sums ?? false }),
        )
      },
      lanes: async () => [[], [], []],
    },
    byHand,
  )
  return { made, asked, byHand }
}

test('A line-up of one’s own is briefed as the plan: who stands in the way has that as its job and still its call, the computed one stands beside it, and both are kept', async () => {
  const { made, asked } = briefed([2, 'marks', 0])
  const plan = await made
  expect(plan.jobs.map(({ goals }) => goals)).toEqual([[plan.jobs[0]!.goals[0]], [], expect.any(Array)])
  expect(plan.jobs[1]).toMatchObject({ team: 'B', sources: [], finish: 'dock', call: { at: expect.anything() } })
  expect(plan.jobs[2]!.goals.length).toBe(2)
  expect(plan.threat).toMatchObject({ team: 'E', marker: 'B' })
  expect(plan.lineUps.map(({ goals }) => goals)).toEqual([[choicesOf(request)[0]![2], [], best[2]], best])
  // What is expected is expected of the plan itself: B brings nothing after the autonomous.
  expect(Object.values(plan.report.robots[1]!.pieces).reduce((sum, { mean }) => sum + mean, 0)).toBe(0)
  // Its call is climbed to with B in the way; what slowing is worth is told with all at their jobs.
  const called = asked.filter(({ calls }) => calls.filter((call) => call !== null).length === 1)
  expect(called.every(({ marks, slowed }) => marks === 1 && slowed === 1)).toBe(true)
  expect(plan.slowings.map(({ team }) => team)).toEqual(['D', 'E', 'F'])
  const slowed = asked.filter((each) => each.slowed !== undefined && each.marks === undefined)
  expect(slowed.map((each) => each.slowed)).toEqual([0, 1, 2])

  const body = planBodyOf(plan, { alliance: 'red', note: '', byHand: true })
  expect(body.instead).toEqual({ goals: best, own: plan.lineUps[0]!.win.mean, win: plan.lineUps[1]!.win.mean })
  expect(body.jobs[1]).toMatchObject({ team: 'B', goals: [], sources: [] })
  expect(planBodyOf(plan, { alliance: 'red', note: '', byHand: false })).not.toHaveProperty('instead')
})

test('Who is to stand in the way and does not come slows nobody', () => {
  const version: Version = { ways: [0, 0, 0], calls: [null, null, null], marks: 1, slowed: 2 }
  const times = (of: Version) => optionsOf(request, of)[5]!.robot.habit!.draws!.map(({ time }) => time ?? 1)
  const plain = times({ ways: [0, 0, 0], calls: [null, null, null] })
  expect(times(version)).toEqual(plain.map((time) => 1.25 * time))
  expect(times({ ...version, absent: 0 })).toEqual(times(version))
  expect(times({ ...version, absent: 1 })).toEqual(plain)
})

test.runIf(process.env['LONG_TESTS'] === '1')(
  'The briefing of a line-up of one’s own compares it with the computed one as it was when it was tried',
  async () => {
    const byHand = { best, own: { told: [1, 'marks', 0] as [Told, Told, Told], marked: 0 } }
    const tried = ownBeside(request, byHand)
    const { lineUps } = await briefAlone(request, undefined, byHand)
    expect(lineUps[0]!.win).toEqual(tried.win)
    expect(lineUps[1]!.win).toEqual(tried.best)
    expect(lineUps[1]!.loses!.points.mean).toBeCloseTo(-tried.loses.points.mean, 9)
  },
)
