import { describe, expect, test } from 'vitest'
import type { Duration, Game, Option } from '../../../src/model/documents/types.ts'
import { habitPoints } from '../../../src/model/match/habitPoints.ts'
import { candidatesFor } from '../../../src/model/match/lineup/candidates.ts'
import { matchReport } from '../../../src/model/match/report.ts'
import { Matches } from '../../../src/model/match/run.ts'
import { Roster } from '../../../src/model/match/setup.ts'
import { game, optionNamed } from '../reference.ts'
import { away, drawn, seen } from './observed.ts'

/** Without what the closed form leaves out: a goal that is full, a source that is empty, a robot that stops. */
const roomy: Game = {
  ...game,
  goals: game.goals.map((goal) => ({ ...goal, capacity: null })),
  sources: game.sources.map((source) => ({ ...source, stock: null, restock: null })),
}
const time = (median: number): Duration => ({ kind: 'lognormal', median, spread: 1.3 })

/** One robot on an empty field, played. */
function played(option: Option) {
  const absent = away(seen('nobody'))
  const setup = new Roster(roomy).setup([option, absent, absent], [absent, absent, absent])
  const sums = new Matches(setup, { seed: 3, level: 'local' }).play(0, 4000)
  return matchReport(setup.ground, sums, 3).robots[0]!
}

const varied = drawn('varied')
const { draws } = varied.robot.habit!
const cases: [string, Option][] = [
  [
    'to the buzzer, two goals and two pieces',
    seen(
      'a',
      {
        collect: { slipway: { whole: time(6), success: 0.8, retry: time(2) } },
        score: {
          pier: [{ whole: time(3), spots: 'any', success: 0.9 }],
          gantry: [{ whole: time(5), spots: 'any', success: 0.7 }],
        },
        finish: {},
      },
      { goals: { pier: 2, gantry: 1 }, pieces: { 1: 0.4, 2: 0.6 } },
    ),
  ],
  [
    'with a finish that is sometimes too late, form, and waiting taken out',
    seen(
      'b',
      {
        form: { spread: 1.2 },
        preload: { piece: 'cask', count: 2 },
        collect: { slipway: { whole: time(7), success: 1, retry: null } },
        score: { pier: [{ whole: time(4), spots: 'any', success: 1 }] },
        finish: { drydock: { whole: time(5), success: 0.8, otherwise: null } },
      },
      { departs: 11, unhindered: { slipway: 0.7, pier: 0.9 } },
    ),
  ],
  [
    'with what is believed about it',
    {
      ...varied,
      robot: {
        ...varied.robot,
        habit: { ...varied.robot.habit!, draws: draws!.map(({ absent: _, stops: __, ...rest }) => rest) },
      },
    },
  ],
]

describe('what an observed robot brings alone, in closed form, is what it brings when it is played', () => {
  test.each(cases)('%s', (_, option) => {
    const found = habitPoints(roomy, option)!
    const robot = played(option)
    // The renewal's second term holds for times long after the start, and the last trips end at the buzzer: measured, the two
    // are within 2 standard errors of each other; half a per cent is left for what they do not share.
    const near = (value: number, { mean, standardError }: { mean: number; standardError: number }) =>
      expect(Math.abs(value - mean)).toBeLessThan(4 * standardError + 0.005 * mean)
    expect(Object.keys(found.goals).length).toBeGreaterThan(0)
    for (const [goal, { pieces }] of Object.entries(found.goals)) near(pieces, robot.pieces[goal]!)
    for (const [id, { points }] of Object.entries(found.finishes)) {
      const pays = roomy.finishes.find((finish) => finish.id === id)!.points
      // How long the leg in hand still takes is taken as spread evenly, which is off by a few hundredths of a finish.
      expect(Math.abs(points / pays - robot.finishes[id]!.mean)).toBeLessThan(0.04)
    }
    near(found.total, robot.points)
  })

  test('a piece on a goal that pays by the second is worth what is left of the match at most', () => {
    const holding = seen('c', {}, { goals: { lightship: 1 }, departs: 0 })
    const paid = (seconds: number) => {
      const { points, pieces } = habitPoints(roomy, { ...holding, holdSeconds: { lightship: seconds } })!.goals
        .lightship!
      return points / pieces
    }
    const perSecond = (roomy.goals.find(({ id }) => id === 'lightship')!.award as { teleopPerSecond: number })
      .teleopPerSecond
    // Placed at any time of 135 s alike: all of them for h = 0, h − h²/270 on average, and 67.5 where h has no end.
    expect(paid(0)).toBe(0)
    expect(paid(30)).toBeCloseTo(perSecond * (30 - 900 / 270), 9)
    expect(paid(600)).toBeCloseTo(perSecond * 67.5, 9)
  })

  test('legs in stages have no such closed form, and a robot without a habit none either', () => {
    expect(habitPoints(game, optionNamed('petrel-best'))).toBeNull()
    const staged = { ...seen('d').robot.score.pier![0]! } as Record<string, unknown>
    delete staged.whole
    const own = seen('d', { score: { pier: [{ ...staged, stages: [] } as never] } })
    expect(habitPoints(game, own)).toBeNull()
  })
})

test('a robot that marks brings nothing meanwhile: who slows nobody is never thought better for it', () => {
  const robots = ['a', 'b', 'c'].map((id) => seen(id))
  const role = robots[0]!.role
  const goals = [['pier'], ['gantry'], ['lightship'], ['pier', 'gantry'], ['pier', 'lightship']]
  const habit = { goals: { pier: 3, gantry: 1, lightship: 1 }, pieces: { 1: 1 }, departs: 20 }
  const defend = { mark: 1 as const, from: 100, until: 0 }
  const request = {
    game: roomy,
    ours: robots.map((option) => ({ ...option, robot: { ...option.robot, habit } })),
    theirs: [robots],
    // Markers first, so that they would stay ahead if marking cost nothing.
    roles: [
      [...goals.map((own) => ({ ...role, goals: own, defend })), ...goals.map((own) => ({ ...role, goals: own }))],
      goals.map((own) => ({ ...role, goals: own })),
      goals.map((own) => ({ ...role, goals: own })),
    ],
    seed: 1,
    objective: 'win' as const,
  }
  const kept = candidatesFor(request)
  expect(kept.length).toBe(64)
  const place = (of: readonly number[]) => kept.findIndex((each) => each.join() === of.join())
  for (const [index, [first, ...others]] of kept.entries())
    if (first < goals.length) {
      const idle = place([first + goals.length, ...others])
      expect(idle).toBeGreaterThanOrEqual(0)
      expect(idle).toBeLessThan(index)
    }
  // All trips to the goal that pays most are the best of habits.
  const teleop = (id: string) => {
    const { award } = roomy.goals.find((goal) => goal.id === id)!
    return award.kind === 'each' ? award.teleop : 3 * award.teleopPerSecond
  }
  const most = ['pier', 'gantry', 'lightship'].sort((x, y) => teleop(y) - teleop(x))[0]!
  const best = goals.findIndex((own) => own.length === 1 && own[0] === most)
  expect(kept[0]).toEqual([best + goals.length, best, best])
})
