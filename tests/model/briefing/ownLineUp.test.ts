import { expect, test } from 'vitest'
import { briefAlone, choicesOf, ownBeside, type Told } from '../../../src/model/briefing/index.ts'
import type { BriefingRequest } from '../../../src/model/briefing/types.ts'
import { observed, observedGame } from './robots.ts'

const request: BriefingRequest = {
  ...{ game: observedGame, seed: 1, slowing: 0.25 },
  ours: ['A', 'B', 'C'].map((id) => observed(id)),
  theirs: ['D', 'E', 'F'].map((id) => observed(id)),
}
const choices = choicesOf(request)
const goals = (told: readonly number[]) => told.map((way, i) => choices[i]![way]!)
const beside = (best: readonly number[], told: readonly [Told, Told, Told]) =>
  ownBeside(request, { best: goals(best), own: { told, marked: 0 }, matches: 200 })

test('A line-up of one’s own meets the same luck: the computed one loses nothing against itself, and two lose against each other what the other wins', () => {
  const same = beside([0, 1, 2], [0, 1, 2])
  expect(same.loses.points).toEqual({ mean: 0, standardError: 0 })
  expect(same.win).toEqual(same.best)
  const [there, back] = [beside([0, 0, 0], [1, 2, 0]), beside([1, 2, 0], [0, 0, 0])]
  expect(there.loses.points.mean).not.toBe(0)
  expect(back.loses.points.mean).toBeCloseTo(-there.loses.points.mean, 9)
  expect([back.win, back.best]).toEqual([there.best, there.win])
})

test('Who stands in the way all match brings nothing to a goal, so that three robots of one kind lose by it', () => {
  const { loses } = beside([0, 0, 0], ['marks', 0, 0])
  expect(loses.points.mean).toBeGreaterThan(5 * loses.points.standardError)
})

test.runIf(process.env['LONG_TESTS'] === '1')(
  'The runner-up of a briefing loses here what the briefing says',
  async () => {
    const { lineUps } = await briefAlone(request)
    const told = lineUps[1]!.goals.map((of, i) => choices[i]!.findIndex((each) => each.join() === of.join()))
    const { win, loses, best } = ownBeside(request, {
      best: lineUps[0]!.goals,
      own: { told: told as [number, number, number], marked: 0 },
    })
    expect({ win, loses }).toEqual({ win: lineUps[1]!.win, loses: lineUps[1]!.loses })
    expect(best).toEqual(lineUps[0]!.win)
  },
)
