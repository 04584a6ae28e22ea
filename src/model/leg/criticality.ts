import type { Network } from './network.ts'
import type { Pmf } from './pmf.ts'
import { drawCount, stageDraws } from './sampled.ts'

/** Two paths of the same length to within this (grid steps) are both longest. */
const equal = 1e-6

/** Earliest and latest times of every stage at given durations, in the durations' own unit. */
export interface Schedule {
  readonly earliestStart: Float64Array
  readonly earliestFinish: Float64Array
  readonly latestStart: Float64Array
  readonly latestFinish: Float64Array
  readonly length: number
}

/**
 * Critical path method: forward pass for earliest, backward pass for latest times.
 * Source: Kelley & Walker, Critical-Path Planning and Scheduling, 1959.
 */
export function schedule(network: Network, durations: ArrayLike<number>): Schedule {
  const count = network.ids.length
  const earliestStart = new Float64Array(count)
  const earliestFinish = new Float64Array(count)
  for (const stage of network.order) {
    let start = 0
    for (const other of network.after[stage] as number[]) start = Math.max(start, earliestFinish[other] as number)
    earliestStart[stage] = start
    earliestFinish[stage] = start + (durations[stage] as number)
  }
  const length = earliestFinish.reduce((most, finish) => Math.max(most, finish), 0)
  const latestFinish = new Float64Array(count).fill(length)
  const latestStart = new Float64Array(count)
  for (let i = count - 1; i >= 0; i--) {
    const stage = network.order[i] as number
    latestStart[stage] = (latestFinish[stage] as number) - (durations[stage] as number)
    for (const other of network.after[stage] as number[])
      latestFinish[other] = Math.min(latestFinish[other] as number, latestStart[stage] as number)
  }
  return { earliestStart, earliestFinish, latestStart, latestFinish, length }
}

/** Share of draws in which each stage lies on a longest path; ties count for every stage on them. */
export function criticalities(network: Network, times: readonly Pmf[]): Float64Array {
  const draws = stageDraws(times)
  const counts = new Float64Array(network.ids.length)
  const durations = new Float64Array(network.ids.length)
  for (let draw = 0; draw < drawCount; draw++) {
    for (let i = 0; i < durations.length; i++) durations[i] = draws[i]?.[draw] as number
    const { earliestStart, latestStart } = schedule(network, durations)
    for (let i = 0; i < durations.length; i++)
      if ((latestStart[i] as number) - (earliestStart[i] as number) < equal) counts[i] = (counts[i] as number) + 1
  }
  return counts.map((count) => count / drawCount)
}
