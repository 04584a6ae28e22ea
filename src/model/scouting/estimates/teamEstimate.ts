import type { TeamDraws } from './draws.ts'
import type { EventEstimates } from './event.ts'
import { autonomousPointDraws, finishPointDraws, nextPointDraws, pointDraws } from './points.ts'
import type { ChanceDraws, ShareDraws } from './priors.ts'
import { drawCount } from './settings.ts'
import { sumOf } from './shares.ts'
import { estimateOf } from './summary.ts'
import type { TeamData } from './teamData.ts'
import type { Estimate, GoalEstimate, TeamEstimate } from './types.ts'

/** What is estimated of a team, read from its draws; each number when it is first asked for. */
export class EstimatesOfTeam implements TeamEstimate {
  readonly team: string
  readonly matches: number
  readonly neverSeen: boolean
  private readonly event: EventEstimates
  private readonly data: TeamData
  private readonly draws: TeamDraws
  private readonly kept = new Map<string, unknown>()

  constructor(event: EventEstimates, team: string) {
    const own = event.input.seen.get(team) ?? []
    this.event = event
    this.team = team
    this.matches = own.length
    const { earlier, told } = event.input
    const before = (earlier?.get(team) ?? []).length + (told?.get(team)?.estimate.matches ?? 0)
    this.neverSeen = own.length === 0 && before === 0
    this.data = event.dataOf(team)
    this.draws = event.draws(team)
  }

  get attempts(): Estimate {
    return this.keep('attempts', () => {
      const { data, draws } = this
      const { teleop, usual } = this.event.measures
      const { mean, ownWeight } = this.rate
      return estimateOf(draws.attempts, {
        mean: (mean * (teleop - data.departing.mean)) / usual,
        ownWeight,
        next: () => draws.nextAttempts,
      })
    })
  }

  get points(): Estimate {
    return this.keep('points', () => {
      const { draws, team } = this
      const { game, holdSeconds = {} } = this.event.input
      return estimateOf(pointDraws(game, draws, holdSeconds), {
        ownWeight: this.rate.ownWeight,
        next: () => nextPointDraws(team, game, { draws, holdSeconds }),
      })
    })
  }

  get goals(): { [goal: string]: GoalEstimate } {
    return this.keep('goals', () => {
      const { draws, data } = this
      const { priors, measures } = this.event
      const { attempts } = draws
      const weight = Math.min(this.rate.ownWeight, ownShare(data.goals, priors.goals, data.claimedGoals))
      return byId(measures.goals, (k): GoalEstimate => {
        const share = draws.goals[k] as Float64Array
        const hit = draws.success(k)
        const tried = productOf(attempts, share)
        const placed = productOf(tried, hit)
        const { hits, misses } = data.success[k]!
        return {
          attempts: estimateOf(tried, { ownWeight: weight }),
          success: chance(hit, priors.success(k), hits + misses),
          placed: estimateOf(placed, { ownWeight: weight }),
        }
      })
    })
  }

  get trip(): TeamEstimate['trip'] {
    return this.keep('trip', () => {
      const { trips } = this.draws
      return (
        trips && {
          median: estimateOf(trips.median, { ownWeight: trips.ownWeight, next: () => this.draws.nextTrip }),
          within: estimateOf(trips.within.map(Math.exp), { ownWeight: 0 }),
          form: estimateOf(trips.form.map(Math.exp), { ownWeight: 0 }),
        }
      )
    })
  }

  get pieces(): Estimate[] {
    return this.keep('pieces', () => {
      const ownWeight = ownShare(this.data.pieces, this.event.priors.pieces)
      return this.draws.pieces.map((each) => estimateOf(each, { ownWeight }))
    })
  }

  get finish(): { [finish: string]: Estimate } {
    return this.keep('finish', () => {
      const ownWeight = ownShare(this.data.finish, this.event.priors.finish, this.data.claimedFinish)
      return byId(this.event.measures.finishes, (k) => estimateOf(this.draws.finish[k]!, { ownWeight }))
    })
  }

  get finishPoints(): Estimate {
    return this.keep('finish points', () =>
      estimateOf(finishPointDraws(this.event.input.game, this.draws), {
        ownWeight: ownShare(this.data.finish, this.event.priors.finish, this.data.claimedFinish),
      }),
    )
  }

  get autonomous(): { [goal: string]: Estimate } {
    return this.keep('autonomous', () =>
      byId(this.event.measures.goals, (k) =>
        estimateOf(this.draws.autonomous[k]!, { ownWeight: this.ownWeightOfAutonomous(k) }),
      ),
    )
  }

  get autonomousPoints(): Estimate {
    return this.keep('autonomous points', () =>
      estimateOf(autonomousPointDraws(this.event.input.game, this.draws), { ownWeight: this.ownWeightOfAutonomous(0) }),
    )
  }

  get leaves(): Estimate {
    return this.rare('leaves')
  }

  get absent(): Estimate {
    return this.rare('absent')
  }

  get stops(): Estimate {
    return this.rare('stops')
  }

  get departs(): Estimate {
    return this.keep('departs', () =>
      estimateOf(this.draws.departs, { mean: this.data.departing.mean, ownWeight: this.data.departing.ownWeight }),
    )
  }

  get defence(): number | null {
    return this.data.defence
  }

  /** Expected pieces in a match that is usual at the event, and how much of that is its own matches' and not claimed. */
  private get rate(): { mean: number; ownWeight: number } {
    return this.keep('rate', () => {
      const { attempts, claimed } = this.data
      const exposure = attempts.exposure + claimed.exposure
      const { mean, ownWeight } = this.event.priors.rateModel.mean({ count: attempts.count + claimed.count, exposure })
      return { mean, ownWeight: exposure > 0 ? (ownWeight * attempts.exposure) / exposure : 0 }
    })
  }

  private rare(what: 'leaves' | 'absent' | 'stops'): Estimate {
    return this.keep(what, () => {
      const { hits, misses } = this.data[what]
      return chance(this.draws[what], this.event.priors[what], hits + misses)
    })
  }

  private ownWeightOfAutonomous(k: number): number {
    const counts = this.data.autonomous[k]
    return counts ? ownShare(counts, this.event.priors.autonomous[k]!) : 0
  }

  private keep<Value>(name: string, make: () => Value): Value {
    if (this.kept.has(name)) return this.kept.get(name) as Value
    const made = make()
    this.kept.set(name, made)
    return made
  }
}

function productOf(one: Float64Array, other: Float64Array): Float64Array {
  const products = new Float64Array(drawCount)
  for (let d = 0; d < drawCount; d++) products[d] = (one[d] as number) * (other[d] as number)
  return products
}

const byId = <Of>(ids: readonly string[], of: (k: number) => Of): { [id: string]: Of } =>
  Object.fromEntries(ids.map((id, k) => [id, of(k)]))

const chance = (values: Float64Array, { a, b }: ChanceDraws, n: number): Estimate => {
  let share = 0
  for (let d = 0; d < a.length; d++) share += n / (n + (a[d] as number) + (b[d] as number))
  return estimateOf(values, { ownWeight: share / a.length })
}

/** Of own counts beside those claimed and the event's, on average over what all teams have in common, as `made.ts` has it. */
function ownShare(counts: Float64Array, { strength }: ShareDraws, claimed?: Float64Array): number {
  const n = sumOf(counts)
  const all = n + (claimed ? sumOf(claimed) : 0)
  let sum = 0
  for (let d = 0; d < strength.length; d++) sum += n / (all + (strength[d] as number))
  return sum / strength.length
}
