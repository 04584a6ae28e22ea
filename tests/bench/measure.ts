import type { BenchEntry, BenchResult } from './entry.ts'

const fewestRuns = 5

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** Medians of at least five runs, the baseline's taken in turn with the value's so that both meet the same machine. */
export async function measure(entry: BenchEntry): Promise<BenchResult> {
  const state = await entry.open?.()
  const values: number[] = []
  const baselines: number[] = []
  try {
    for (let run = 0; run < Math.max(fewestRuns, entry.runs ?? fewestRuns); run++) {
      values.push(await entry.run(state))
      if (entry.baseline) baselines.push(await entry.baseline.run(state))
    }
  } finally {
    await entry.close?.(state)
  }
  const { name, unit, better } = entry
  const value = median(values)
  if (!entry.baseline) return { name, value, unit, better }
  const baseline = { what: entry.baseline.what, value: median(baselines) }
  return { name, value, unit, better, baseline, ratio: value / baseline.value }
}
