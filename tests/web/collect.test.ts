import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../seed/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { cycles, shownLegs, typicalCycle } from '../../web/screens/designs/cycle.ts'
import { actionWords } from '../../web/words/actions.ts'
import { sources } from '../house/sources.ts'

const { game } = breakwater
const option = optionOf('shearwater-best')

describe('the trip that takes pieces in is called as in the schema, the API and the glossary', () => {
  test('in the policy: collect so many from a place', () => {
    const action = { kind: 'collect', source: 'channel', spot: game.sources[0]!.spots[0]!.id, load: 2 } as const
    expect(actionWords(game, action)).toMatch(new RegExp(`^collect 2 from ${game.sources[0]!.name}`))
  })

  test('over the strip: the first leg of a whole cycle collects, and its trip is the robot’s own', () => {
    const cycle = cycles(game, option)[0]!
    const legs = shownLegs(game, cycle, { show: 'cycle' })
    expect(legs.map(({ name }) => name.split(' ')[0])).toEqual(['Collect', 'Score'])
    expect(legs[0]!.trip).toEqual(['collect', cycle.source])
    expect(shownLegs(game, cycle, { show: 'collect' })).toEqual([legs[0]])
  })

  test('nowhere in the screens by another word', () => {
    // `fetch` as the browser’s own call stays: as a type, an argument or its name, an event, or followed by a bracket.
    const call =
      /typeof fetch|addEventListener\('fetch'|\bfetch: |\bfetch\(|[fF]etching[A-Z]\w*|isFetching|fetchNextPage|is fetched|\(fetch, /g
    const other = sources('web').filter(({ text }) => /\bfetch/i.test(text.replace(call, '')))
    expect(other.map(({ path }) => path)).toEqual([])
  })
})

test('the cycle first shown is the one that the plan does: a source, a goal, and the load between them', () => {
  const { policy } = new Planner(game).quick(option)
  const cycle = typicalCycle(game, option, policy)!
  const source = game.sources.find(({ id }) => id === cycle.source)!
  expect(source.spots.map(({ id }) => id)).toContain(cycle.sourceSpot)
  expect(game.goals.find(({ id }) => id === cycle.goal)!.accepts).toContain(source.piece)
  const collecting = policy.some(({ bands }) =>
    bands.some(({ action }) => action.kind === 'collect' && action.spot === cycle.sourceSpot),
  )
  expect(collecting).toBe(true)
})
