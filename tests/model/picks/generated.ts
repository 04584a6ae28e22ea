import { Strengths } from '../../../src/model/picks/order/index.ts'
import { type RatedTeam, Sibling, samplePairings } from '../../../src/model/picks/scores/index.ts'
import type { SelectionRules } from '../../../src/model/picks/selection/index.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { normalQuantile } from '../../../src/model/scouting/statistics/index.ts'
import { game, lots, rated } from './field.ts'

export const rules: SelectionRules = {
  alliances: 6,
  size: 3,
  serpentine: true,
  captainsInvitable: false,
  afterDeclining: 'captain',
}
export const draws = 60
/** Of ln of what a team brings: how far beliefs lie off the truth. */
export const doubt = 0.2

/** Teams as they are and as they are believed to be; some know the gantry, which has room for twelve, others the pier. */
export function eventOf(seed: number): { truth: RatedTeam[]; belief: RatedTeam[] } {
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

export const strengthsOf = (teams: readonly RatedTeam[], seed: number) =>
  new Strengths(
    new Sibling(game, teams, lots(teams, { pairings: samplePairings({ teams, seed }), each: 40, sd: 14, seed })),
  )
