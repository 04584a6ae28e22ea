import { philox } from '../../random/index.ts'
import type { Sibling } from '../scores/index.ts'

/**
 * How others invite, as far as anybody can know: each alliance goes by expected points of its own, which are a draw from what
 * is believed of each team; so it errs where we are unsure, and another alliance errs elsewhere. What an alliance likes that no
 * number knows is not in it, and whoever is invited accepts. An assumption, without a source.
 */
export class OwnOrders {
  private readonly sibling: Sibling
  private readonly key: readonly [number, number]
  private readonly words = new Uint32Array(4)
  private readonly places: ReadonlyMap<string, number>

  constructor(sibling: Sibling, teams: readonly string[], seed: number) {
    this.sibling = sibling
    this.key = [seed % 2 ** 32, Math.floor(seed / 2 ** 32)]
    this.places = new Map(teams.map((team, k) => [team, k]))
  }

  /** Whom an alliance likes best of these teams; null where there is none. */
  best(teams: readonly string[], { run, alliance }: { run: number; alliance: number }): string | null {
    let best: string | null = null
    let most = Number.NEGATIVE_INFINITY
    for (const team of teams) {
      const points = this.points(team, { run, alliance })
      if (points <= most) continue
      best = team
      most = points
    }
    return best
  }

  private points(team: string, { run, alliance }: { run: number; alliance: number }): number {
    const { points } = this.sibling.rating(team)
    philox([run, alliance, this.places.get(team) as number, 8], this.key, this.words)
    return points[Math.floor(((this.words[0] as number) / 2 ** 32) * points.length)] as number
  }
}
