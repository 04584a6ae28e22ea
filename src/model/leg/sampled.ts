import { stratified } from '../random/index.ts'
import type { Network } from './network.ts'
import { type Pmf, pmf } from './pmf.ts'

/** Draws for what is not computed exactly; a multiple of what the model asks for at least. */
export const drawCount = 20_000
const seed = 20_251

/**
 * Stratified draws of every stage's time (grid steps, real numbers spread evenly within a step), one permuted column
 * per stage: column s holds one draw from each of the equally likely strata of stage s.
 */
export function stageDraws(times: readonly Pmf[], count = drawCount): Float64Array[] {
  return times.map((time, stream) => {
    const draws = stratified(count, seed, stream)
    for (let i = 0; i < count; i++) draws[i] = inverse(time, draws[i] as number)
    return draws
  })
}

const cumulatives = new WeakMap<Pmf, Float64Array>()

function inverse(time: Pmf, u: number): number {
  let cumulative = cumulatives.get(time)
  if (!cumulative) {
    cumulative = new Float64Array(time.mass.length)
    let sum = 0
    for (let i = 0; i < cumulative.length; i++) cumulative[i] = sum += time.mass[i] as number
    cumulatives.set(time, cumulative)
  }
  let low = 0
  let high = cumulative.length - 1
  while (low < high) {
    const middle = (low + high) >> 1
    if ((cumulative[middle] as number) >= u) high = middle
    else low = middle + 1
  }
  return time.first + low
}

/** Latest finish of some stages, from stratified draws with a fixed seed. */
export function sampledMakespan(network: Network, stages: readonly number[], times: readonly Pmf[]): Pmf {
  const draws = stageDraws(times)
  const wanted = new Set(stages)
  const finish = new Float64Array(network.ids.length)
  const counts = new Map<number, number>()
  for (let draw = 0; draw < drawCount; draw++) {
    let last = 0
    for (const stage of network.order) {
      let start = 0
      for (const other of network.after[stage] as number[]) start = Math.max(start, finish[other] as number)
      finish[stage] = start + (draws[stage]?.[draw] as number)
      if (wanted.has(stage)) last = Math.max(last, finish[stage] as number)
    }
    counts.set(last, (counts.get(last) ?? 0) + 1)
  }
  const places = [...counts.keys()]
  const first = Math.min(...places)
  const mass = new Float64Array(Math.max(...places) - first + 1)
  for (const [place, count] of counts) mass[place - first] = count / drawCount
  return pmf(first, mass)
}
