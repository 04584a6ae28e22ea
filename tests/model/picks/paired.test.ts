import { expect, test } from 'vitest'
import { pickOrder, Strengths } from '../../../src/model/picks/order/index.ts'
import { type RatedTeam, Sibling, samplePairings } from '../../../src/model/picks/scores/index.ts'
import {
  allianceOf,
  bestOf,
  follow,
  membersOf,
  onTurn,
  Selection,
  type SelectionRules,
} from '../../../src/model/picks/selection/index.ts'
import { Moments, Uniforms } from '../../../src/model/random/index.ts'
import { normalQuantile } from '../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game, lots, rated } from './field.ts'

const rules: SelectionRules = {
  alliances: 6,
  size: 3,
  serpentine: true,
  captainsInvitable: false,
  afterDeclining: 'captain',
}
const draws = 60
/** Of ln of what a team brings: how far beliefs lie off the truth. */
const doubt = 0.2

/** Teams as they are and as they are believed to be; some know the gantry, which has room for twelve, others the pier. */
function eventOf(seed: number): { truth: RatedTeam[]; belief: RatedTeam[] } {
  const uniforms = new Uniforms(seed, [1])
  const normal = () => normalQuantile(uniforms.next())
  const pairs = Array.from({ length: 26 }, (_, k) => {
    const [level, gantry] = [4 + 12 * uniforms.next(), uniforms.next()]
    const brings = { pier: level * (1 - gantry), gantry: 0.7 * level * gantry, davit: 0.9 * uniforms.next() }
    const believed = Math.exp(doubt * normal())
    const form = Array.from({ length: draws }, () => believed * Math.exp(doubt * normal()))
    return { truth: rated(`t${k}`, brings), belief: rated(`t${k}`, { ...brings, form }) }
  })
  return { truth: pairs.map(({ truth }) => truth), belief: pairs.map(({ belief }) => belief) }
}

const strengthsOf = (teams: readonly RatedTeam[], seed: number) =>
  new Strengths(
    new Sibling(game, teams, lots(teams, { pairings: samplePairings({ teams, seed }), each: 40, sd: 14, seed })),
  )

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
