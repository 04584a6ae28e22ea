import type { ChanceData } from './chances.ts'
import { countOf, Named } from './pool.ts'
import type { ChanceDraws, EventPriors, ShareDraws } from './priors.ts'
import { drawCount } from './settings.ts'
import type { Measures, TeamData } from './teamData.ts'
import { nextTrips, type TripDraws, tripDraws } from './tripDraws.ts'

export interface DrawsOf {
  data: TeamData
  measures: Measures
  priors: EventPriors
}

/**
 * Draws of a team's expectations, and of its next match, each from its posterior under the same draw of what all teams share.
 * Arrays run over draws; those of several things over these first. Each is made when it is first asked for: a list of
 * teams asks for few of them.
 */
export class TeamDraws {
  private readonly team: string
  private readonly of: DrawsOf
  private readonly kept = new Map<string, unknown>()

  constructor(team: string, of: DrawsOf) {
    this.team = team
    this.of = of
  }

  /** Time left at the departure (s). */
  get departs(): Float64Array {
    return this.keep('departs', () => {
      const left = this.named('departs')
      const { mean, variance } = this.of.data.departing
      const spread = Math.sqrt(variance)
      return each((d) => Math.min(this.of.measures.teleop - 1, Math.max(0, mean + spread * left.normal(d))))
    })
  }

  /** Pieces tried in teleop. */
  get attempts(): Float64Array {
    return this.keep('attempts', () => {
      const { data, measures, priors } = this.of
      const { shape, rate } = priors.rates
      const count = data.attempts.count + data.claimed.count
      const exposure = data.attempts.exposure + data.claimed.exposure
      const tried = this.named('attempts')
      const { departs } = this
      const values = tried.gammas(shape, count)
      for (let d = 0; d < values.length; d++) {
        const own = (values[d] as number) / ((rate[d] as number) + exposure)
        values[d] = (own * (measures.teleop - (departs[d] as number))) / measures.usual
      }
      return values
    })
  }

  get nextAttempts(): Float64Array {
    return this.keep('next attempts', () => {
      const [mixing, u] = [this.named('next attempts'), this.named('next')]
      const { attempts } = this
      const { dispersion } = this.of.measures
      return each((d) => countOf(attempts[d] as number, dispersion, { mixing, u: u.uniform(d), draw: d }))
    })
  }

  /** By goal: its share of the pieces tried. */
  get goals(): Float64Array[] {
    const { data, priors } = this.of
    return this.shares('goals', priors.goals, [data.goals, data.claimedGoals])
  }

  /** The share of hits at the goal with this number. */
  success(k: number): Float64Array {
    const { data, priors } = this.of
    return this.keep(`success ${k}`, () => this.chance(`success ${k}`, priors.success(k), data.success[k]!))
  }

  /** By number of pieces in a trip, from 1. */
  get pieces(): Float64Array[] {
    return this.shares('pieces', this.of.priors.pieces, [this.of.data.pieces])
  }

  /** By finish, none at the end. */
  get finish(): Float64Array[] {
    const { data, priors } = this.of
    return this.shares('finish', priors.finish, [data.finish, data.claimedFinish])
  }

  /** By goal: pieces that hit in autonomous. */
  get autonomous(): Float64Array[] {
    const { data, priors } = this.of
    return this.keep('autonomous', () =>
      data.autonomous.map((counts, k) => {
        const values = new Float64Array(drawCount)
        for (const [n, share] of this.shares(`autonomous ${k}`, priors.autonomous[k]!, [counts]).entries())
          for (let d = 0; d < values.length; d++) values[d]! += n * (share[d] as number)
        return values
      }),
    )
  }

  get absent(): Float64Array {
    return this.keep('absent', () => this.chance('absent', this.of.priors.absent, this.of.data.absent))
  }

  get stops(): Float64Array {
    return this.keep('stops', () => this.chance('stops', this.of.priors.stops, this.of.data.stops))
  }

  get leaves(): Float64Array {
    return this.keep('leaves', () => this.chance('leaves', this.of.priors.leaves, this.of.data.leaves))
  }

  /** Null where no trip of the event was timed. */
  get trips(): TripDraws | null {
    return this.keep('trips', () => (this.of.priors.tripModel.timed ? tripDraws(this.team, this.of) : null))
  }

  get nextTrip(): Float64Array | null {
    return this.keep('next trip', () => (this.trips ? nextTrips(this.team, this.trips) : null))
  }

  private named(what: string): Named {
    return new Named(`${this.team} ${what}`)
  }

  private keep<Value>(name: string, make: () => Value): Value {
    if (this.kept.has(name)) return this.kept.get(name) as Value
    const made = make()
    this.kept.set(name, made)
    return made
  }

  private chance(what: string, { a, b }: ChanceDraws, { hits, misses }: ChanceData): Float64Array {
    const values = this.named(`${what} a`).gammas(a, hits)
    const others = this.named(`${what} b`).gammas(b, misses, scratch)
    for (let d = 0; d < values.length; d++) {
      const [hit, all] = [values[d] as number, (values[d] as number) + (others[d] as number)]
      values[d] = all > 0 ? hit / all : (a[d] as number) / ((a[d] as number) + (b[d] as number))
    }
    return values
  }

  /** Shares by category: Dirichlet of the prior's draw and all counts. */
  private shares(what: string, { alpha }: ShareDraws, counts: readonly Float64Array[]): Float64Array[] {
    return this.keep(what, () => {
      const sums = new Float64Array(drawCount)
      const drawn = alpha.map((shapes, c) => {
        const own = counts.reduce((sum, n) => sum + (n[c] as number), 0)
        const values = this.named(`${what} ${c}`).gammas(shapes, own)
        for (let d = 0; d < values.length; d++) sums[d]! += values[d] as number
        return values
      })
      for (const values of drawn)
        for (let d = 0; d < values.length; d++) {
          const sum = sums[d] as number
          values[d] = sum > 0 ? (values[d] as number) / sum : 1 / alpha.length
        }
      return drawn
    })
  }
}

/** Used within one call and never kept. */
const scratch = new Float64Array(drawCount)

function each(of: (d: number) => number): Float64Array {
  const values = new Float64Array(drawCount)
  for (let d = 0; d < drawCount; d++) values[d] = of(d)
  return values
}
