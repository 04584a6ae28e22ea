import { attemptsOf, type TeamMatch } from '../seen/index.ts'
import { quantilesOf } from '../statistics/described.ts'
import type { ChanceData } from './chances.ts'
import { departureIn } from './departure.ts'
import type { EventEstimates } from './event.ts'
import { Named } from './pool.ts'
import type { ChanceDraws, ShareDraws } from './priors.ts'
import { drawCount } from './settings.ts'
import { sumOf } from './shares.ts'
import { exposureOf } from './teamData.ts'
import type { Interval } from './types.ts'
import { type Weighted, weightAt } from './weights.ts'

/** What one own match says of a number. */
export interface MadeMatch {
  match: string
  /** Of an earlier event, whose matches may be called as this one's are. */
  earlier?: true
  records: string[]
  /** Pieces of a whole match, a share of tries, seconds: whatever the number is. */
  value: number
  /** How much of it was seen: whole matches, tries, trips. */
  seen: number
  /** 1; less for one that lies back by the event's half-life, or before a change of the robot. */
  weight: number
}

/** A number as the mean of what own matches, the team itself and the event say, each with its share. Shares add up to 1. */
export interface Made {
  matches: MadeMatch[]
  /** Means; null where nothing was seen or claimed. */
  own: { mean: number; share: number } | null
  claimed: { mean: number; share: number } | null
  event: { mean: number; share: number }
}

/** What was believed after each own match, with the event as it is known now. */
export interface Running {
  match: string
  mean: number
  interval80: Interval
}

/** What the numbers of a team are made of. */
export interface MadeOfTeam {
  attempts: Made
  running: Running[]
  /** Of goals: what was placed, the share of hits, and the pieces that hit in autonomous. */
  goals: { [goal: string]: { placed: MadeMatch[]; success: Made; autonomous: Made } }
  /** Means are of logarithms, made seconds again; null where no trip of the event was timed. */
  trip: Made | null
  finish: { [finish: string]: Made }
  leaves: Made
  stops: Made
  absent: Made
  departs: Made
}

/** Takes the numbers of a team apart. Each share is averaged over the draws of what all teams have in common. */
export function madeOf(event: EventEstimates, team: string): MadeOfTeam {
  const { measures, priors } = event
  const data = event.dataOf(team)
  const own = event.weightedOf(team)
  const all = (of: (seen: TeamMatch) => { value: number; seen: number } | null): MadeMatch[] =>
    own.flatMap((each) => {
      const said = of(each.seen)
      return said && said.seen > 0 ? [{ ...named(each), ...said }] : []
    })
  const once = (of: (seen: TeamMatch) => number | null) =>
    all((seen) => {
      const value = of(seen)
      return value === null ? null : { value, seen: 1 }
    })
  /** Pieces of a whole match, which was seen for a part of one. */
  const pieces = (of: (counts: NonNullable<TeamMatch['teleop']>['goals']) => number) =>
    all((seen) => {
      const exposure = exposureOf(seen, measures, data.departing)
      return seen.teleop && exposure > 0 ? { value: of(seen.teleop.goals) / exposure, seen: exposure } : null
    })
  const whether = (of: (seen: TeamMatch) => boolean | null) =>
    once((seen) => {
      const hit = of(seen)
      return hit === null ? null : Number(hit)
    })
  return {
    attempts: { matches: pieces(attemptsOf), ...rateParts(event, team) },
    running: runningOf(event, team),
    goals: Object.fromEntries(
      measures.goals.map((goal, k) => [
        goal,
        {
          placed: pieces((counts) => counts[goal]?.scored ?? 0),
          success: {
            matches: all(({ teleop }) => {
              const { scored = 0, missed = 0 } = teleop?.goals[goal] ?? {}
              return scored + missed > 0 ? { value: scored / (scored + missed), seen: scored + missed } : null
            }),
            ...chanceParts(data.success[k]!, priors.success(k)),
          },
          autonomous: {
            matches: once(({ autonomous }) => (autonomous ? (autonomous[goal]?.scored ?? 0) : null)),
            ...shareParts([data.autonomous[k]!], priors.autonomous[k]!, (n) => n),
          },
        },
      ]),
    ),
    trip: tripParts(event, team),
    finish: Object.fromEntries(
      measures.finishes.map((finish, k) => [
        finish,
        {
          matches: whether(({ finish: said, stopped }) => {
            if (!said || stopped) return null
            const achieved =
              said.achieved === null ? measures.finishes.length - 1 : measures.finishes.indexOf(said.achieved)
            return achieved < 0 ? null : achieved === k
          }),
          ...shareParts([data.finish, data.claimedFinish], priors.finish, (category) => Number(category === k)),
        },
      ]),
    ),
    leaves: { matches: whether(({ left }) => left), ...chanceParts(data.leaves, priors.leaves) },
    stops: {
      matches: whether(({ teleop, stopped }) => (teleop ? stopped : null)),
      ...chanceParts(data.stops, priors.stops),
    },
    absent: { matches: whether(({ absent }) => absent), ...chanceParts(data.absent, priors.absent) },
    departs: {
      matches: once(({ teleop }) => (teleop ? departureIn(teleop) : null)),
      ...departParts(event, team),
    },
  }
}

/** Which match it is, and what it counts. */
const named = ({ seen, weight, here }: Weighted) => ({
  match: seen.match,
  ...(here ? {} : { earlier: true as const }),
  records: seen.records,
  weight,
})

type Parts = Omit<Made, 'matches'>

/** @param sums of what each says times its share, and of the shares, over all draws */
function partsOf(sums: { own: Sum; claimed: Sum; event: Sum }): Parts {
  const all = sums.own.share + sums.claimed.share + sums.event.share
  const part = ({ value, share }: Sum) => (share > 0 ? { mean: value / share, share: share / all } : null)
  return { own: part(sums.own), claimed: part(sums.claimed), event: part(sums.event) ?? { mean: 0, share: 0 } }
}

interface Sum {
  value: number
  share: number
}

const sum = (): Sum => ({ value: 0, share: 0 })

const add = (to: Sum, value: number, share: number): void => {
  to.value += value * share
  to.share += share
}

/** Gamma: count over exposure, beside shape over rate. */
function rateParts(event: EventEstimates, team: string): Parts {
  const { attempts, claimed, departing } = event.dataOf(team)
  const { teleop, usual } = event.measures
  const { shape, rate } = event.priors.rates
  const sums = { own: sum(), claimed: sum(), event: sum() }
  const all = attempts.exposure + claimed.exposure
  // A rate is of a match to the event's usual departure; the number is of one to the team's own.
  const whole = (teleop - departing.mean) / usual
  for (let d = 0; d < drawCount; d++) {
    const total = (rate[d] as number) + all
    if (attempts.exposure > 0) add(sums.own, (whole * attempts.count) / attempts.exposure, attempts.exposure / total)
    if (claimed.exposure > 0) add(sums.claimed, (whole * claimed.count) / claimed.exposure, claimed.exposure / total)
    add(sums.event, (whole * (shape[d] as number)) / (rate[d] as number), (rate[d] as number) / total)
  }
  return partsOf(sums)
}

/** Beta: hits over tries, beside the event's. */
function chanceParts({ hits, misses }: ChanceData, { a, b }: ChanceDraws): Parts {
  const sums = { own: sum(), claimed: sum(), event: sum() }
  const n = hits + misses
  for (let d = 0; d < drawCount; d++) {
    const strength = (a[d] as number) + (b[d] as number)
    if (n > 0) add(sums.own, hits / n, n / (strength + n))
    add(sums.event, (a[d] as number) / strength, strength / (strength + n))
  }
  return partsOf(sums)
}

/** Dirichlet: a number that each category stands for, on average. */
function shareParts(
  [own, claimed]: readonly [Float64Array, Float64Array?],
  prior: ShareDraws,
  worth: (category: number) => number,
): Parts {
  const sums = { own: sum(), claimed: sum(), event: sum() }
  const of = (counts: Float64Array) => counts.reduce((total, count, k) => total + count * worth(k), 0)
  const [n, c] = [sumOf(own), claimed ? sumOf(claimed) : 0]
  for (let d = 0; d < drawCount; d++) {
    const strength = prior.strength[d] as number
    const all = strength + n + c
    if (n > 0) add(sums.own, of(own) / n, n / all)
    if (claimed && c > 0) add(sums.claimed, of(claimed) / c, c / all)
    let expected = 0
    for (const [k, alpha] of prior.alpha.entries()) expected += (alpha[d] as number) * worth(k)
    add(sums.event, expected / strength, strength / all)
  }
  return partsOf(sums)
}

function tripParts(event: EventEstimates, team: string): Made | null {
  const { trips } = event.draws(team)
  if (!trips) return null
  const { own, claimed, event: level } = trips.parts
  const seconds = (part: { mean: number; share: number }) => ({ ...part, mean: Math.exp(part.mean) })
  return {
    matches: event.weightedOf(team).flatMap((each): MadeMatch[] => {
      const { seen } = each
      const ended = (seen.teleop?.cycles ?? []).filter((cycle) => cycle.ended && cycle.seconds >= 0.5)
      const n = ended.reduce((total, cycle) => total + cycle.weight, 0)
      if (n === 0) return []
      const log = ended.reduce((total, cycle) => total + cycle.weight * Math.log(cycle.seconds), 0) / n
      return [{ ...named(each), value: Math.exp(log), seen: n }]
    }),
    own: own && seconds(own),
    claimed: claimed && seconds(claimed),
    event: seconds(level),
  }
}

function departParts(event: EventEstimates, team: string): Parts {
  const { mean, ownWeight, eventMean } = event.dataOf(team).departing
  const rest = 1 - ownWeight
  const own = ownWeight > 0 ? { mean: (mean - rest * eventMean) / ownWeight, share: ownWeight } : null
  return { own, claimed: null, event: { mean: eventMean, share: rest } }
}

/** Pieces tried as believed after each own match, by its weight then: the newest counts whole. */
function runningOf(event: EventEstimates, team: string): Running[] {
  const { measures, priors, weighing } = event
  const { claimed, departing } = event.dataOf(team)
  const { shape, rate } = priors.rates
  const tried = new Named(`${team} attempts`)
  const whole = (measures.teleop - departing.mean) / measures.usual
  const own = event.weightedOf(team).flatMap((each): (Weighted & { exposure: number })[] => {
    const exposure = exposureOf(each.seen, measures, departing)
    return exposure > 0 ? [{ ...each, exposure }] : []
  })
  return own.flatMap(({ seen, here }, last) => {
    // What was believed at an earlier event stands there.
    if (!here) return []
    let [count, exposure] = [claimed.count, claimed.exposure]
    const now = own[last] as Weighted
    for (let m = 0; m <= last; m++) {
      const each = own[m] as Weighted & { exposure: number }
      const steps = Math.max(0, each.steps - now.steps)
      const weight = weightAt({ age: last - m, steps, here: each.here }, weighing)
      count += (weight * attemptsOf(each.seen.teleop!.goals)) / measures.dispersion
      exposure += (weight * each.exposure) / measures.dispersion
    }
    const draws = Float64Array.from(
      { length: drawCount },
      (_, d) => (whole * tried.gamma(d, (shape[d] as number) + count)) / ((rate[d] as number) + exposure),
    )
    const [low, high] = quantilesOf(draws, [0.1, 0.9]) as [number, number]
    const { mean } = priors.rateModel.mean({ count, exposure })
    return [{ match: seen.match, mean: whole * mean, interval80: [low, high] }]
  })
}
