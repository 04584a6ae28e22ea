import type { BenchEntry, BenchResult } from './entry.ts'

const fewestRuns = 5

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** Medians of at least five runs, the baseline's taken in turn with the value's so that both meet the same machine. */
export async function measure(entry: BenchEntry): Promise<BenchResult> {
  const { run, baseline, close } = await entry.open()
  const values: number[] = []
  const baselines: number[] = []
  try {
    for (let turn = 0; turn < Math.max(fewestRuns, entry.runs ?? fewestRuns); turn++) {
      values.push(await run())
      if (baseline) baselines.push(await baseline.run())
    }
  } finally {
    await close?.()
  }
  const { name, unit, better } = entry
  const value = median(values)
  if (!baseline) return { name, value, unit, better }
  const against = median(baselines)
  return { name, value, unit, better, baseline: { what: baseline.what, value: against }, ratio: value / against }
}
