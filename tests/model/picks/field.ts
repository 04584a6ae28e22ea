import type { Game } from '../../../src/model/documents/types.ts'
import { type Lot, type Pairing, type RatedTeam, type Rating, TraitsOf } from '../../../src/model/picks/scores/index.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { normalQuantile } from '../../../src/model/scouting/statistics/index.ts'
import { seen } from '../match/observed.ts'
import { game as reference } from '../reference.ts'

/** Pier at 2 points a piece, gantry at 5 with room for 12; one finish with one slot at 12 points. No sets, nothing held. */
export const game: Game = {
  ...reference,
  goals: reference.goals.filter(({ id }) => id !== 'lightship'),
  finishes: reference.finishes.filter(({ id }) => id === 'davit'),
  sets: [],
  bonuses: [],
}

export interface Expected {
  pier?: number
  gantry?: number
  /** Chance of the davit. */
  davit?: number
  /** By draw: what its pieces are multiplied by. */
  form?: readonly number[]
}

const worth = game.goals.map(({ award }) => (award.kind === 'each' ? award.teleop : 0))

/** A team that brings so many pieces of each goal. */
export function rated(team: string, { pier = 0, gantry = 0, davit = 0, form = [1] }: Expected): RatedTeam {
  const each = (value: number) => Float64Array.from(form, (factor) => value * factor)
  const pieces = game.goals.map(({ id }) => each(id === 'pier' ? pier : gantry))
  const goals = pieces.map((own, k) => own.map((n) => n * (worth[k] as number)))
  const chance = Float64Array.from(form, () => davit)
  const finishing = chance.map((p) => p * (game.finishes[0]?.points as number))
  const rating: Rating = {
    points: chance.map((_, d) => goals.reduce((sum, own) => sum + (own[d] as number), finishing[d] as number)),
    autonomous: each(0),
    goals,
    finishing,
    pieces,
    hits: pieces.map(() => Float64Array.from(form, () => 0.8)),
    finishes: [chance],
  }
  return { team, rating, option: seen(team), met: rating }
}

/** As if matches had been simulated: each alliance scores what is expected of it and normal luck, in whole points. */
export function lots(
  teams: readonly RatedTeam[],
  { pairings, each, sd, seed = 1 }: { pairings: readonly Pairing[]; each: number; sd: number; seed?: number },
): Lot[] {
  const traits = new TraitsOf(game)
  const uniforms = new Uniforms(seed, [9])
  const met = new Map(teams.map((team) => [team.team, team.met]))
  const draws = teams[0]?.met.points.length as number
  return pairings.map((pairing) => {
    const sides = [pairing.ours, pairing.theirs].map((side) => traits.by(side.map((team) => met.get(team) as Rating)))
    const played = {
      met: new Uint16Array(6 * each),
      scores: new Float64Array(2 * each),
      bonuses: new Uint32Array(2 * each),
      criteria: new Float64Array(0),
    }
    for (let k = 0; k < each; k++) {
      const d = uniforms.below(draws)
      played.met.fill(d, 6 * k, 6 * k + 6)
      for (const [side, own] of sides.entries())
        played.scores[2 * k + side] = Math.round((own.expected[d] as number) + sd * normalQuantile(uniforms.next()))
    }
    return { pairing, played }
  })
}
