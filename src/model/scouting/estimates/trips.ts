import { cutOff } from './cutOff.ts'
import { type Grid, logNormal, picker, posteriorGrid } from './grid.ts'
import { hyperpriors } from './settings.ts'
import type { TripMatch, TripTeam } from './tripData.ts'

/** A normal factor about a mean logarithm. */
export interface Factor {
  log: number
  mean: number
  precision: number
}

const nothing: Factor = { log: 0, mean: 0, precision: 0 }

/** One draw for the event: spreads (of ln) within a match, between matches and between teams, and the level of all teams. */
export interface TripPrior {
  within: number
  form: number
  between: number
  level: number
  /** The same for draws with the same spreads within and between matches. */
  key: number
}

/**
 * What is believed about the times of trips: log-normal, with one spread within and one between matches for all teams,
 * and teams about a common level. Trips that were cut off count as longer than they were seen.
 */
export class Trips {
  /** Whether any trip of the event has been timed. */
  readonly timed: boolean
  private readonly grid: Grid
  private readonly pick: (u: number) => number
  private readonly teams: readonly TripTeam[]
  private readonly rough: Rough
  private readonly levels = new Map<number, Factor>()
  private readonly kept = { within: -1, form: -1, matches: [] as Factor[][], teams: [] as Factor[] }

  constructor(teams: readonly TripTeam[]) {
    this.teams = teams.filter(({ length }) => length > 0)
    this.rough = roughly(this.teams)
    this.timed = this.rough.count > 0
    const { within, form, between } = hyperpriors.trip
    const logWithin = { mean: Math.log(within.median), sd: within.spread }
    const logBetween = { mean: Math.log(between.median), sd: between.spread }
    this.grid = posteriorGrid(
      [
        { from: Math.log(0.03), to: Math.log(1.5), search: 8, points: 8 },
        { from: 0, to: 3 * form.scale, search: 8, points: 11 },
        { from: Math.log(0.02), to: Math.log(1.8), search: 8, points: 11 },
      ],
      (at) => {
        const [w, f, b] = at as unknown as [number, number, number]
        const prior = logNormal(w, logWithin) + logNormal(f, { mean: 0, sd: form.scale }) + logNormal(b, logBetween)
        return prior + this.levelAt(Math.exp(w), f, Math.exp(b)).log
      },
    )
    this.pick = picker(this.grid)
  }

  /** @param z a standard normal number, for the level */
  prior(u: number, z: number): TripPrior {
    const k = this.pick(u)
    const [withins, forms, betweens] = this.grid.axes as [Float64Array, Float64Array, Float64Array]
    const within = Math.exp(withins[Math.floor(k / betweens.length / forms.length)] as number)
    const form = forms[Math.floor(k / betweens.length) % forms.length] as number
    const between = Math.exp(betweens[k % betweens.length] as number)
    let level = this.levels.get(k)
    if (!level) {
      level = this.levelAt(within, form, between)
      this.levels.set(k, level)
    }
    const key = Math.floor(k / betweens.length)
    return { within, form, between, level: level.mean + z / Math.sqrt(level.precision), key }
  }

  /** What a team's own trips say of its mean logarithm at median form. */
  own(team: TripTeam, { within, form }: Pick<TripPrior, 'within' | 'form'>): Factor {
    return teamFactor(matchFactors(team, within, this.rough), form)
  }

  /** What all teams say of the level they lie about. */
  private levelAt(within: number, form: number, between: number): Factor {
    const { kept, teams } = this
    if (kept.within !== within) {
      kept.within = within
      kept.form = -1
      kept.matches = teams.map((team) => matchFactors(team, within, this.rough))
    }
    if (kept.form !== form) {
      kept.form = form
      kept.teams = kept.matches.map((matches) => teamFactor(matches, form))
    }
    const { level } = hyperpriors.trip
    return about(kept.teams, between * between, { mean: Math.log(level.median), precision: 1 / level.spread ** 2 })
  }
}

/** Of the event, well enough to say where trips that were cut off may lie. */
interface Rough {
  count: number
  level: number
}

function roughly(teams: readonly TripTeam[]): Rough {
  let [count, sum] = [0, 0]
  for (const team of teams)
    for (const match of team) {
      count += match.count
      sum += match.count * match.mean
    }
  return { count, level: count > 0 ? sum / count : Math.log(hyperpriors.trip.level.median) }
}

/** Variances that are taken for teams and matches where a cut-off trip's own are not yet known. */
const roughBetween = 0.3 ** 2
const roughForm = 0.15 ** 2

/** What each match says of its own mean logarithm; `precision` is not weighted yet, weights are beside it. */
function matchFactors(team: TripTeam, within: number, rough: Rough): WeightedFactor[] {
  const variance = within * within
  let [count, sum] = [0, 0]
  for (const match of team) {
    count += match.count
    sum += match.count * match.mean
  }
  return team.map((match) => {
    const others = count - match.count
    const worth = variance / roughBetween
    const mean = (sum - match.count * match.mean + worth * rough.level) / (others + worth)
    const about = { mean, variance: roughForm + variance / (others + worth) }
    return { weight: match.weight, ...matchFactor(match, variance, about) }
  })
}

interface WeightedFactor extends Factor {
  weight: number
}

function matchFactor(match: TripMatch, variance: number, about: { mean: number; variance: number }): Factor {
  const own: Factor = {
    log: -0.5 * match.count * Math.log(variance) - (0.5 * match.squares) / variance,
    mean: match.mean,
    precision: match.count / variance,
  }
  if (match.cut.length === 0) return own
  const precision = 1 / about.variance + own.precision
  const belief = {
    mean: (about.mean / about.variance + own.precision * own.mean) / precision,
    variance: 1 / precision,
  }
  const sites = match.cut.map(({ at, weight }) => {
    const site = cutOff(at, variance, belief)
    return { log: weight * site.log, mean: site.mean, precision: weight * site.precision }
  })
  return product([own, ...sites])
}

/** The team's mean logarithm: matches lie about it by their form; a match's weight is a power of what it says. */
function teamFactor(matches: readonly Factor[], form: number): Factor {
  if (matches.length === 0) return nothing
  return product(
    matches.map((match) => {
      const { weight } = match as WeightedFactor
      const { log, mean, precision } = widened(match, form * form)
      return { log: weight * log, mean, precision: weight * precision }
    }),
  )
}

/** What a factor about m says of the centre that m lies about with this variance. */
function widened({ log, mean, precision }: Factor, variance: number): Factor {
  const all = 1 + variance * precision
  return { log: log - 0.5 * Math.log(all), mean, precision: precision / all }
}

/** Factors about one mean, multiplied. */
function product(factors: readonly Factor[]): Factor {
  let [log, precision, sum] = [0, 0, 0]
  for (const each of factors) {
    log += each.log
    precision += each.precision
    sum += each.precision * each.mean
  }
  if (precision <= 0) return { log, mean: 0, precision: 0 }
  const mean = sum / precision
  for (const each of factors) log -= 0.5 * each.precision * (each.mean - mean) ** 2
  return { log, mean, precision }
}

/**
 * What factors about means that lie about a common one with this variance say of it, under a belief about it; `log` is the
 * evidence. One pass without objects in between, because a grid asks for hundreds.
 */
function about(factors: readonly Factor[], variance: number, belief: Omit<Factor, 'log'>): Factor {
  let log = 0
  let precision = belief.precision
  // About the belief's mean, so that squares do not cancel.
  let [first, second] = [0, 0]
  for (const each of factors) {
    const all = 1 + variance * each.precision
    const own = each.precision / all
    const off = each.mean - belief.mean
    log += each.log - 0.5 * Math.log(all)
    precision += own
    first += own * off
    second += own * off * off
  }
  log += 0.5 * Math.log(belief.precision / precision) - 0.5 * (second - (first * first) / precision)
  return { log, mean: belief.mean + first / precision, precision }
}
