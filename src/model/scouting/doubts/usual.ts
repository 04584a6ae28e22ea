import { logGamma } from '../statistics/index.ts'
import { groupsOf } from './groups.ts'
import type { OneRecord } from './sides.ts'

/** What a team never seen is worth, in matches: about as much as the spread of teams within an event says (stated, not estimated). */
const priorMatches = 0.7
/** Robots differ from match to match by more than chance does: other matches count this much (stated, not estimated). */
const weight = 0.5

/** How usual numbers of pieces are for a team, judged by its other matches: Gamma–Poisson about the event's mean. */
export class Usual {
  private readonly means: number[]
  private readonly byTeam: Map<string, OneRecord[]>
  private readonly kept = new Map<string, { shapes: number[]; rate: number }>()

  constructor(records: readonly OneRecord[], goals: number) {
    const known = records.filter(({ pieces }) => pieces !== null)
    this.byTeam = groupsOf(known, ({ team }) => team)
    this.means = Array.from({ length: goals }, (_, k) => {
      const sum = known.reduce((total, { pieces }) => total + (pieces as number[])[k]!, 0)
      return Math.max(0.05, sum / Math.max(1, known.length))
    })
  }

  /**
   * ln of the chance of so many pieces by goal, which need be no whole numbers.
   *
   * @param except match whose records do not count, as one of them is judged
   */
  logChance(team: string, except: string, pieces: readonly number[]): number {
    const { shapes, rate } = this.without(team, except)
    return pieces.reduce((sum, n, k) => sum + negativeBinomial(Math.max(0, n), shapes[k] as number, rate), 0)
  }

  private without(team: string, except: string): { shapes: number[]; rate: number } {
    const key = JSON.stringify([team, except])
    const known = this.kept.get(key)
    if (known) return known
    const shapes = this.means.map((mean) => priorMatches * mean)
    let rate = priorMatches
    for (const { match, share, pieces } of this.byTeam.get(team) ?? []) {
      if (match === except) continue
      rate += weight * share
      for (const [k, n] of (pieces as number[]).entries()) shapes[k]! += weight * share * n
    }
    const found = { shapes, rate }
    this.kept.set(key, found)
    return found
  }
}

const negativeBinomial = (n: number, shape: number, rate: number): number =>
  logGamma(n + shape) - logGamma(shape) - logGamma(n + 1) + shape * Math.log(rate / (rate + 1)) - n * Math.log(rate + 1)
