import { expect, test } from 'vitest'
import { pickOrder } from '../../../src/model/picks/order/index.ts'
import type { RatedTeam } from '../../../src/model/picks/scores/index.ts'
import { allianceOf, bestOf, follow, membersOf, onTurn, Selection } from '../../../src/model/picks/selection/index.ts'
import { Moments } from '../../../src/model/random/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game } from './field.ts'
import { eventOf, rules, strengthsOf } from './generated.ts'

/** True chance of our alliance when we invite by the tool's order, less that by mean points; others go by mean points both times. */
function advantage(seed: number): number {
  const { truth, belief } = eventOf(seed)
  const [known, real] = [strengthsOf(belief, seed), strengthsOf(truth, seed)]
  const mean = ({ rating }: RatedTeam) => rating.points.reduce((sum, own) => sum + own, 0)
  const seeds = belief.toSorted((a, b) => mean(b) - mean(a)).map(({ team }) => team)
  const places = new Map(seeds.map((team, place) => [team, place]))
  const us = seeds[seed % rules.alliances] as string
  const chance = (choose: (selection: Selection) => string | null) => {
    let selection = Selection.begin(rules, seeds)
    while (selection.state.turn) {
      const { state } = selection
      const team = onTurn(state, us) ? choose(selection) : bestOf(state.free, places)
      if (team === null) break
      selection = selection.take({ kind: 'accepts', team })
    }
    const { state } = follow(selection, () => null)
    const ours = membersOf(allianceOf(state, us) as NonNullable<ReturnType<typeof allianceOf>>)
    const others = state.alliances.map(membersOf).filter((each) => !each.includes(us))
    return real.against(ours, others)[0] as number
  }
  const byTool = chance(
    (selection) => pickOrder({ game, strengths: known, selection, us }).order.choices[0]?.team ?? null,
  )
  return byTool - chance(({ state }) => bestOf(state.free, places))
}

test.runIf(inLongForm)(
  'over 200 generated events an alliance picked by the tool’s order wins more often than one by mean points',
  { timeout: 1_800_000 },
  () => {
    const moments = new Moments()
    for (let seed = 1; seed <= 200; seed++) moments.add(advantage(seed))
    const { mean, standardError } = moments
    console.log(
      'advantage in true win chance',
      mean,
      '95 % interval',
      mean - 1.96 * standardError,
      mean + 1.96 * standardError,
    )
    expect(mean - 1.96 * standardError).toBeGreaterThan(0)
  },
)
