import type { Game } from '../../documents/types.ts'
import type { Rating } from './types.ts'

/** A rating as it is sent and kept: what its sums are made of, in few digits. Lists by goal and by finish are in the game's order. */
export interface PackedRating {
  autonomous: number[]
  goals: number[][]
  pieces: number[][]
  hits: number[][]
  finishes: number[][]
}

/** Decimals: what is cut off lies far below what is not known of any team, and each draw is cut by itself, up as often as down. */
const decimals = { points: 1, pieces: 2, shares: 2 }

const cut = (what: keyof typeof decimals) => (values: Float64Array) =>
  Array.from(values, (value) => Number(value.toFixed(decimals[what])))

export const packRating = ({ autonomous, goals, pieces, hits, finishes }: Rating): PackedRating => ({
  autonomous: cut('points')(autonomous),
  goals: goals.map(cut('points')),
  pieces: pieces.map(cut('pieces')),
  hits: hits.map(cut('shares')),
  finishes: finishes.map(cut('shares')),
})

/** Of its draws each so-many-th. */
export function thinnedRating(of: Rating, every: number): Rating {
  const some = (values: Float64Array) => values.filter((_, d) => d % every === 0)
  const { points, autonomous, goals, finishing, pieces, hits, finishes } = of
  return {
    ...{ points: some(points), autonomous: some(autonomous), finishing: some(finishing) },
    ...{ goals: goals.map(some), pieces: pieces.map(some), hits: hits.map(some), finishes: finishes.map(some) },
  }
}

export function unpackRating({ finishes: known }: Pick<Game, 'finishes'>, of: PackedRating): Rating {
  const numbers = (values: readonly number[]) => Float64Array.from(values)
  const [autonomous, goals, finishes] = [numbers(of.autonomous), of.goals.map(numbers), of.finishes.map(numbers)]
  const finishing = autonomous.map((_, d) =>
    finishes.reduce((sum, chance, k) => sum + (known[k]?.points ?? 0) * (chance[d] as number), 0),
  )
  const points = autonomous.map((own, d) =>
    goals.reduce((sum, each) => sum + (each[d] as number), own + (finishing[d] as number)),
  )
  return { points, autonomous, goals, finishing, pieces: of.pieces.map(numbers), hits: of.hits.map(numbers), finishes }
}
