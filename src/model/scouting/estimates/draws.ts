import type { ChanceData } from './chances.ts'
import { countOf, Named } from './pool.ts'
import type { EventPriors } from './priors.ts'
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
      return each((d) => {
        const own = tried.gamma(d, (shape[d] as number) + count) / ((rate[d] as number) + exposure)
        return (own * (measures.teleop - (departs[d] as number))) / measures.usual
      })
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
        const byNumber = this.shares(`autonomous ${k}`, priors.autonomous[k]!, [counts])
        return each((d) => byNumber.reduce((sum, share, n) => sum + n * (share[d] as number), 0))
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

  private chance(what: string, { a, b }: { a: Float64Array; b: Float64Array }, { hits, misses }: ChanceData) {
    const [one, other] = [this.named(`${what} a`), this.named(`${what} b`)]
    return each((d) => {
      const hit = one.gamma(d, (a[d] as number) + hits)
      const all = hit + other.gamma(d, (b[d] as number) + misses)
      return all > 0 ? hit / all : (a[d] as number) / ((a[d] as number) + (b[d] as number))
    })
  }

  /** Shares by category: Dirichlet of the prior's draw and all counts. */
  private shares(what: string, prior: readonly Float64Array[], counts: readonly Float64Array[]): Float64Array[] {
    return this.keep(what, () => {
      const categories = (prior[0] as Float64Array).length
      const drawn = Array.from({ length: categories }, (_, c) => {
        const own = counts.reduce((sum, n) => sum + (n[c] as number), 0)
        const of = this.named(`${what} ${c}`)
        return each((d) => of.gamma(d, ((prior[d] as Float64Array)[c] as number) + own))
      })
      for (let d = 0; d < drawCount; d++) {
        let sum = 0
        for (const values of drawn) sum += values[d] as number
        for (const values of drawn) values[d] = sum > 0 ? (values[d] as number) / sum : 1 / categories
      }
      return drawn
    })
  }
}

function each(of: (d: number) => number): Float64Array {
  const values = new Float64Array(drawCount)
  for (let d = 0; d < drawCount; d++) values[d] = of(d)
  return values
}
