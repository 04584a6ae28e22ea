import { cutOff } from './cutOff.ts'
import { cellPicker, type Grid, logNormal, posteriorGrid } from './grid.ts'
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
  centre: { within: number; form: number }
}

/**
 * What is believed about the times of trips: log-normal, with one spread within and one between matches for all teams,
 * and teams about a common level. Trips that were cut off count as longer than they were seen.
 */
export class Trips {
  /** Whether any trip of the event has been timed. */
  readonly timed: boolean
  private readonly grid: Grid
  private readonly pick: ReturnType<typeof cellPicker>
  private readonly teams: readonly TripTeam[]
  private readonly rough: Rough
  private readonly levels = new Map<number, Factor>()
  /** What matches say, by the spread within: the same for all spreads between. */
  private readonly ofTeam = new Map<TripTeam, Map<number, WeightedFactor[]>>()
  private readonly kept = { within: -1, form: -1, matches: [] as WeightedFactor[][], teams: [] as Factor[] }

  constructor(teams: readonly TripTeam[]) {
    this.teams = teams.filter(({ length }) => length > 0)
    this.rough = roughly(this.teams)
    this.timed = this.rough.count > 0 || this.teams.some((team) => team.some(({ told }) => told !== undefined))
    const { within, form, between } = hyperpriors.trip
    const logWithin = { mean: Math.log(within.median), sd: within.spread }
    const logBetween = { mean: Math.log(between.median), sd: between.spread }
    this.grid = posteriorGrid(
      [
        { from: Math.log(0.02), to: Math.log(3), search: 8, points: 8 },
        { from: 0, to: 4 * form.scale, search: 8, points: 11 },
        { from: Math.log(0.02), to: Math.log(3), search: 8, points: 11 },
      ],
      (at) => {
        const [w, f, b] = at as unknown as [number, number, number]
        const prior = logNormal(w, logWithin) + logNormal(f, { mean: 0, sd: form.scale }) + logNormal(b, logBetween)
        return prior + this.levelAt(Math.exp(w), f, Math.exp(b)).log
      },
    )
    this.pick = cellPicker(this.grid)
  }

  /** @param z a standard normal number, for the level */
  prior(u: number, z: number): TripPrior {
    const { cell: k, within: places } = this.pick(u)
    const [withins, forms, betweens] = this.grid.axes as [Float64Array, Float64Array, Float64Array]
    const key = Math.floor(k / betweens.length)
    const at = [Math.floor(key / forms.length), key % forms.length, k % betweens.length] as const
    const centre = {
      within: withins[at[0]] as number,
      form: forms[at[1]] as number,
      between: betweens[at[2]] as number,
    }
    let level = this.levels.get(k)
    if (!level) {
      level = this.levelAt(Math.exp(centre.within), centre.form, Math.exp(centre.between))
      this.levels.set(k, level)
    }
    // Somewhere within the cell: few cells would give few numbers. What the team's trips say is that of the cell's middle.
    const off = (axis: Float64Array, place: number) => (place - 0.5) * ((axis[1] as number) - (axis[0] as number))
    return {
      within: Math.exp(centre.within + off(withins, places[0])),
      form: Math.max(0, centre.form + off(forms, places[1])),
      between: Math.exp(centre.between + off(betweens, places[2])),
      level: level.mean + z / Math.sqrt(level.precision),
      key,
      centre: { within: Math.exp(centre.within), form: centre.form },
    }
  }

  /** What a team's own trips say of its mean logarithm at median form. */
  own(team: TripTeam, { centre: { within, form } }: Pick<TripPrior, 'centre'>): Factor {
    const known = this.ofTeam.get(team) ?? new Map<number, WeightedFactor[]>()
    const matches = known.get(within) ?? matchFactors(team, within, this.rough)
    this.ofTeam.set(team, known.set(within, matches))
    return teamFactor(matches, form)
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

/** Of the event, well enough to say where trips that were cut off may lie: ln of seconds and its spreads. */
interface Rough {
  count: number
  level: number
  within: number
  between: number
}

/** Spread between matches that is taken where a cut-off trip's own is not yet known. */
const roughForm = 0.15
const roughTurns = 4

/** From the trips that ended, then also from those that were cut off, a few times over: slow robots hardly end any. */
function roughly(teams: readonly TripTeam[]): Rough {
  const { trip } = hyperpriors
  let [count, sum, squares, free] = [0, 0, 0, 0]
  for (const team of teams)
    for (const match of team) {
      count += match.count
      sum += match.count * match.mean
      squares += match.squares
      free += Math.max(0, match.count - 1)
    }
  // Worth ten trips of what is believed beforehand, so that few do not give a spread of none.
  const within = Math.sqrt((squares + 10 * trip.within.median ** 2) / (free + 10))
  let rough: Rough = { count, within, between: trip.between.median, level: Math.log(trip.level.median) }
  if (count > 0) rough.level = sum / count
  for (let turn = 0; turn < roughTurns && teams.length > 0; turn++) {
    const before = 1 / rough.between ** 2
    const beliefs = teams.map((team) => {
      const { mean, precision } = teamFactor(matchFactors(team, within, rough), roughForm)
      return {
        mean: (before * rough.level + precision * mean) / (before + precision),
        variance: 1 / (before + precision),
      }
    })
    const level = beliefs.reduce((total, { mean }) => total + mean, 0) / beliefs.length
    const spread = beliefs.reduce((total, { mean, variance }) => total + (mean - level) ** 2 + variance, 0)
    // Worth three teams of what is believed beforehand.
    const between = Math.sqrt((spread + 3 * trip.between.median ** 2) / (beliefs.length + 3))
    rough = { ...rough, level, between }
  }
  return rough
}

/** Trips of a match with so many ended say so much that those of other matches hardly move the cut-off one. */
const enoughEnded = 4
const sweeps = 3

/**
 * What each match says of its own mean logarithm, before its weight. A trip that was cut off is looked at in the light of the
 * match's other trips, the team's other matches and the event, in turn until they agree.
 */
function matchFactors(team: TripTeam, within: number, rough: Rough): WeightedFactor[] {
  const variance = within * within
  const before = { log: 0, mean: rough.level, precision: 1 / rough.between ** 2 }
  const factors = team.map(
    (match): WeightedFactor => ({
      weight: match.weight,
      told: match.told !== undefined,
      ...endedFactor(match, variance),
    }),
  )
  const turns = team.every(({ count }) => count >= enoughEnded) ? 1 : sweeps
  const shareOf = ({ precision }: Factor) => precision / (1 + roughForm * roughForm * precision)
  for (let turn = 0; turn < turns; turn++) {
    // Of all matches, from which each one's own is taken out: a sum for each would take their number squared.
    let [precision, sum] = [before.precision, before.precision * before.mean]
    for (const factor of factors) {
      precision += shareOf(factor)
      sum += shareOf(factor) * factor.mean
    }
    for (const [m, match] of team.entries()) {
      if (match.cut.length === 0) continue
      const own = factors[m] as WeightedFactor
      precision -= shareOf(own)
      sum -= shareOf(own) * own.mean
      const about = { mean: sum / precision, variance: 1 / precision + roughForm * roughForm }
      const next = { weight: match.weight, told: false, ...matchFactor(match, variance, about) }
      factors[m] = next
      precision += shareOf(next)
      sum += shareOf(next) * next.mean
    }
  }
  return factors
}

interface WeightedFactor extends Factor {
  weight: number
  /** Of the team's mean itself and not of a match's. */
  told: boolean
}

function endedFactor(match: TripMatch, variance: number): Factor {
  if (match.told !== undefined) return { log: 0, mean: match.mean, precision: match.told }
  return {
    log: -0.5 * match.count * Math.log(variance) - (0.5 * match.squares) / variance,
    mean: match.mean,
    precision: match.count / variance,
  }
}

function matchFactor(match: TripMatch, variance: number, about: { mean: number; variance: number }): Factor {
  const own = endedFactor(match, variance)
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
function teamFactor(matches: readonly WeightedFactor[], form: number): Factor {
  if (matches.length === 0) return nothing
  const variance = form * form
  return product(
    matches.map((match) => {
      if (match.told) return match
      const { weight, log, mean, precision } = match
      // What a factor about a match's mean says of the centre that it lies about with this variance.
      const all = 1 + variance * precision
      return { log: weight * (log - 0.5 * Math.log(all)), mean, precision: (weight * precision) / all }
    }),
  )
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
  // One logarithm for many: of their product, long before it overflows.
  let widths = 1
  // About the belief's mean, so that squares do not cancel.
  let [first, second] = [0, 0]
  for (const each of factors) {
    const all = 1 + variance * each.precision
    const own = each.precision / all
    const off = each.mean - belief.mean
    log += each.log
    widths *= all
    if (widths > 1e150) {
      log -= 0.5 * Math.log(widths)
      widths = 1
    }
    precision += own
    first += own * off
    second += own * off * off
  }
  log += 0.5 * Math.log(belief.precision / precision / widths) - 0.5 * (second - (first * first) / precision)
  return { log, mean: belief.mean + first / precision, precision }
}
