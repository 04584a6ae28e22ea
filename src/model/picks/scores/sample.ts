import { Uniforms } from '../../random/index.ts'
import type { Pairing, RatedTeam } from './types.ts'

export interface SampleRequest {
  teams: readonly RatedTeam[]
  /** How many pairings, and from how many of the strongest teams: alliances of the playoffs are made of those. */
  pairings?: number
  strongest?: number
  seed: number
}

/**
 * Pairings of alliances drawn among the strongest teams, each of which plays about as often.
 * @throws Error for fewer than six teams
 */
export function samplePairings({ teams, pairings = 24, strongest = 24, seed }: SampleRequest): Pairing[] {
  if (teams.length < 6) throw new Error(`A match needs six teams, got ${teams.length}`)
  const mean = ({ rating }: RatedTeam) => rating.points.reduce((sum, own) => sum + own, 0)
  const best = teams
    .map((each) => ({ team: each.team, mean: mean(each) }))
    .sort((a, b) => b.mean - a.mean || (a.team < b.team ? -1 : 1))
    .slice(0, Math.max(6, strongest))
    .map(({ team }) => team)
  const uniforms = new Uniforms(seed, [3])
  let waiting: string[] = []
  return Array.from({ length: pairings }, (): Pairing => {
    const six: string[] = []
    while (six.length < 6) {
      if (waiting.length === 0) waiting = shuffled(best, uniforms)
      const next = waiting.findIndex((team) => !six.includes(team))
      if (next < 0) waiting = []
      else six.push(...waiting.splice(next, 1))
    }
    return { ours: six.slice(0, 3), theirs: six.slice(3) }
  })
}

function shuffled(teams: readonly string[], uniforms: Uniforms): string[] {
  const order = [...teams]
  for (let i = order.length - 1; i > 0; i--) {
    const other = uniforms.below(i + 1)
    const team = order[i] as string
    order[i] = order[other] as string
    order[other] = team
  }
  return order
}
