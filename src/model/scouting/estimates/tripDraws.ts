import type { DrawsOf } from './draws.ts'
import { Named } from './pool.ts'
import { claimWeight, drawCount } from './settings.ts'
import type { Factor } from './trips.ts'

export interface TripDraws {
  /** Seconds, at median form. */
  median: Float64Array
  /** Standard deviations of ln within and between matches. */
  within: Float64Array
  form: Float64Array
  ownWeight: number
  /** Mean logarithms of what each says, with its share; null where it says nothing. */
  parts: { own: Part | null; claimed: Part | null; event: Part }
}

interface Part {
  mean: number
  share: number
}

export function tripDraws(team: string, { data, priors }: Omit<DrawsOf, 'measures'>): TripDraws {
  const z = new Named(`${team} trips`)
  const median = new Float64Array(drawCount)
  const own = new Map<number, Factor>()
  const sums = { own: { mean: 0, share: 0 }, claimed: { mean: 0, share: 0 }, event: { mean: 0, share: 0 } }
  const add = (to: Part, mean: number, share: number) => {
    to.mean += share * mean
    to.share += share
  }
  const { tripModel, trips: drawn } = priors
  for (let d = 0; d < drawCount; d++) {
    const prior = drawn[d]!
    let factor = own.get(prior.key)
    if (!factor) {
      factor = tripModel.own(data.trips, prior)
      own.set(prior.key, factor)
    }
    const before = 1 / (prior.between * prior.between)
    const claim = claimed(data.claimedCycle, prior)
    const precision = before + factor.precision + claim.precision
    const mean = (before * prior.level + factor.precision * factor.mean + claim.precision * claim.mean) / precision
    median[d] = Math.exp(mean + z.normal(d) / Math.sqrt(precision))
    add(sums.own, factor.mean, factor.precision / precision / drawCount)
    add(sums.claimed, claim.mean, claim.precision / precision / drawCount)
    add(sums.event, prior.level, before / precision / drawCount)
  }
  return {
    median,
    within: Float64Array.from(drawn, ({ within }) => within),
    form: Float64Array.from(drawn, ({ form }) => form),
    ownWeight: sums.own.share,
    parts: { own: part(sums.own), claimed: part(sums.claimed), event: part(sums.event)! },
  }
}

const part = ({ mean, share }: Part): Part | null => (share > 0 ? { mean: mean / share, share } : null)

/** Trips of a match, as many as are usual: a claimed mean time counts as half a match of them, taken to the median. */
const tripsOfMatch = 6

function claimed(cycle: number | null, { within, form }: { within: number; form: number }): Omit<Factor, 'log'> {
  if (cycle === null) return { mean: 0, precision: 0 }
  const precision = claimWeight / ((within * within) / tripsOfMatch + form * form + 1e-6)
  return { mean: Math.log(cycle) - 0.5 * within * within, precision }
}

/** A match's median trip, at the form that it will have. */
export function nextTrips(team: string, { median, form }: TripDraws): Float64Array {
  const z = new Named(`${team} next trip`)
  return median.map((seconds, d) => seconds * Math.exp((form[d] as number) * z.normal(d)))
}
