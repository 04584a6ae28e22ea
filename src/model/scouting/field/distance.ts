import { Uniforms } from '../../random/index.ts'
import { kaplanMeier } from '../statistics/index.ts'
import { Curve, formAt, overForms, readAt } from './mixture.ts'
import type { FieldTrip, Stretch } from './trips.ts'
import type { Way } from './ways.ts'

const seed = 60_611

type Timed = Pick<FieldTrip, 'seconds' | 'ended' | 'weight' | 'way'>

export interface FieldDistance {
  distance: number
  p: number
}

/** The distribution functions of the ways that were seen, over all forms. */
export class Predicted {
  readonly spread: number
  private readonly curves = new Map<Way, Curve>()
  private readonly tables = new Map<Way, Float64Array>()

  constructor(spread: number) {
    this.spread = spread
  }

  curve(way: Way): Curve {
    let curve = this.curves.get(way)
    if (!curve) {
      curve = new Curve(way.times)
      this.curves.set(way, curve)
    }
    return curve
  }

  table(way: Way): Float64Array {
    let table = this.tables.get(way)
    if (!table) {
      table = overForms(this.curve(way), this.spread)
      this.tables.set(way, table)
    }
    return table
  }
}

/** A way with its part of the trips. */
export const mixOf = (trips: readonly Timed[], shares: readonly number[]): [Way, number][] => {
  const mix = new Map<Way, number>()
  let total = 0
  for (const [i, { way }] of trips.entries()) {
    if (!way) continue
    mix.set(way, (mix.get(way) ?? 0) + shares[i]!)
    total += shares[i]!
  }
  return [...mix].map(([way, share]) => [way, share / total])
}

/** The greatest distance of the product-limit estimate from the model's distribution of the same mix. */
export function distanceOf(trips: readonly Timed[], predicted: Predicted): number {
  const { shares } = kaplanMeier(trips)
  const mix = mixOf(trips, shares).map(([way, share]) => ({ table: predicted.table(way), share }))
  const ended = trips
    .flatMap(({ seconds, ended }, i) => (ended ? [{ seconds, share: shares[i]! }] : []))
    .sort((a, b) => a.seconds - b.seconds)
  let [below, most] = [0, 0]
  for (let i = 0; i < ended.length; ) {
    const { seconds } = ended[i]!
    let model = 0
    for (const { table, share } of mix) model += share * readAt(table, seconds)
    most = Math.max(most, model - below)
    for (; i < ended.length && ended[i]!.seconds === seconds; i++) below += ended[i]!.share
    most = Math.max(most, below - model)
  }
  return most
}

/**
 * One-sample Kolmogorov–Smirnov distance of trips from what the design predicts for the same mix of legs, with trips that were cut
 * off. How often the model itself lies at least so far off is counted: it plays the same stretches again, the same ways in the same
 * order and further ones of the mix while there is room, with one form for each run and cut off at the end as the field was.
 * Without cut-off trips and with form 1 this is the classical test; it holds where that does not, for few trips too.
 */
export function fieldDistance(
  trips: readonly FieldTrip[],
  stretches: readonly Stretch[],
  { predicted, plays }: { predicted: Predicted; plays: number },
): FieldDistance {
  const distance = distanceOf(trips, predicted)
  const ways = stretches.flatMap((stretch) => stretch.ways)
  let asFar = 0
  for (let play = 0; play < plays; play++) {
    const played = replayed(stretches, ways, { predicted, play })
    if (played.some(({ ended }) => ended) && distanceOf(played, predicted) >= distance - 1e-12) asFar++
  }
  return { distance, p: (1 + asFar) / (1 + plays) }
}

function replayed(
  stretches: readonly Stretch[],
  ways: readonly Way[],
  { predicted, play }: { predicted: Predicted; play: number },
): Timed[] {
  const draw = new Uniforms(seed, [play])
  const forms = new Map<number, number>()
  const trips: Timed[] = []
  for (const { run, room, ways: own } of stretches) {
    let form = forms.get(run)
    if (form === undefined) {
      form = formAt(predicted.spread, draw.next())
      forms.set(run, form)
    }
    let left = room
    for (let i = 0; left > 0; i++) {
      const way = own[i] ?? ways[draw.below(ways.length)]!
      const seconds = Math.max(0.01, form * predicted.curve(way).quantile(draw.next()))
      const ended = seconds <= left
      trips.push({ seconds: Math.min(seconds, left), ended, weight: 1, way: ended ? way : null })
      left -= seconds
    }
  }
  return trips
}
