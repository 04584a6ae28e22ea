/**
 * One thing that is measured. A file of this folder named `*.bench.ts` exports a list of them as default;
 * `npm run bench` runs them all and prints a table.
 */
export interface BenchEntry {
  /** Stays for good, so that runs of different days can be compared: `plan.cold`. */
  name: string
  unit: string
  better: 'lower' | 'higher'
  /** Repetitions of `run` whose median is reported; at least 5, which is the default. */
  runs?: number
  /** Done once before the first run and not measured. Its result is handed to `run` and `close`. */
  // biome-ignore lint/suspicious/noExplicitAny: each entry knows the type of its own state
  open?: () => any
  /** One measurement: the value in `unit`. */
  // biome-ignore lint/suspicious/noExplicitAny: each entry knows the type of its own state
  run: (state: any) => number | Promise<number>
  // biome-ignore lint/suspicious/noExplicitAny: each entry knows the type of its own state
  close?: (state: any) => void | Promise<void>
  /** Measured in turn with `run`, in the same process: what the value is compared with. */
  // biome-ignore lint/suspicious/noExplicitAny: each entry knows the type of its own state
  baseline?: { what: string; run: (state: any) => number | Promise<number> }
}

export interface BenchResult {
  name: string
  value: number
  unit: string
  better: 'lower' | 'higher'
  baseline?: { what: string; value: number }
  /** `value` over the baseline's. */
  ratio?: number
}

/** Milliseconds that `work` takes. */
export async function milliseconds(work: () => unknown): Promise<number> {
  const begin = performance.now()
  await work()
  return performance.now() - begin
}
