import { MixedModel } from '../solved/index.ts'
import { groupsOf } from './groups.ts'
import type { Checked } from './sides.ts'
import type { Off } from './spread.ts'
import type { Swap } from './swapped.ts'

export interface Swapper {
  scout: string
  pair: [number, number]
  swaps: Swap[]
  /** Sum of what its records gain, as ln. */
  gain: number
}

/** A record that does not fit a habit costs at most so much, as ln: who swaps need not do so always. */
const mostLost = -1.5

/**
 * What the records of a scout say together about two goals taken for each other: the highest cumulative sum of their gains, which begins
 * anew where it falls below nothing, so that good records of the morning do not hide what went wrong after lunch.
 *
 * Source: the cumulative sum of Page, Biometrika 41 (1954), 100–115.
 *
 * @param swaps in the order of play
 */
export function swappers(swaps: readonly Swap[]): Swapper[] {
  const groups = groupsOf(swaps, ({ record, pair }) => JSON.stringify([record.scout, pair]))
  return [...groups.values()].map((own) => {
    const { record, pair } = own[0] as Swap
    let [begun, sum] = [0, 0]
    let highest: Swapper = { scout: record.scout, pair, swaps: [], gain: 0 }
    for (const [k, { gain }] of own.entries()) {
      sum += Math.max(mostLost, gain)
      if (sum <= 0) [begun, sum] = [k + 1, 0]
      else if (sum > highest.gain) highest = { ...highest, swaps: own.slice(begun, k + 1), gain: sum }
    }
    return highest
  })
}

export interface ScoutEffect {
  scout: string
  /** Official less scouted, per record. */
  effect: number
  /** The effect over its standard error. */
  z: number
  records: number
}

/** Differences further off than this many standard deviations count as so far: one odd match makes no habit. */
const heldAt = 3

/**
 * Pieces per record by which scouts are off at a goal, by a mixed model: a side's difference = level + effects of those who
 * watched it + noise, at the ratio of variances that is most likely. Scouts with few records are drawn towards none.
 */
export function scoutEffects(sides: readonly { side: Checked; off: Off }[], goal: number, sd: number): ScoutEffect[] {
  const rows = sides.flatMap(({ side, off }) => {
    const value = off[goal]
    return value == null || side.records.length === 0
      ? []
      : [{ side, value: Math.max(-heldAt * sd, Math.min(heldAt * sd, value)) }]
  })
  const scouts = [...new Set(rows.flatMap(({ side }) => side.records.map(({ scout }) => scout)))].sort()
  if (scouts.length < 2 || rows.length < 2 * scouts.length) return []
  const place = new Map(scouts.map((scout, k) => [scout, k]))
  const named = rows.map(({ side }) => side.records.map(({ scout }) => place.get(scout) as number))
  const values = rows.map(({ value }) => value)
  if (values.every((value) => value === values[0])) return []
  const model = new MixedModel(named, values, scouts.length)
  const ratios = Array.from({ length: 13 }, (_, k) => Math.exp(-6 + k / 1.5))
  const best = ratios.map((ratio) => model.at(ratio)).reduce((a, b) => (b.logLikelihood > a.logLikelihood ? b : a))
  return scouts.map((scout, k) => {
    const effect = best.solution[k + 1] as number
    const error = Math.sqrt(best.variance * best.covariance.get(k + 1, k + 1))
    return { scout, effect, z: effect / error, records: named.filter((row) => row.includes(k)).length }
  })
}
