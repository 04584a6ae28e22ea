type Measurement = () => number | Promise<number>

/**
 * One thing that is measured. A file of this folder named `*.bench.ts` exports a list of them as default;
 * `npm run bench` runs them all and prints a table.
 */
export interface BenchEntry {
  /** Stays for good, so that runs of different days can be compared: `plan.cold`. */
  name: string
  unit: string
  better: 'lower' | 'higher'
  /** Repetitions whose median is reported; at least 5, which is the default. */
  runs?: number
  /** Takes minutes: measured only where its name, or what it begins with, is asked for. */
  onlyNamed?: boolean
  /** Makes ready what is not measured, and hands back how to take one measurement (in `unit`). */
  open(): Opened | Promise<Opened>
}

/** What a file named `*.bench.ts` exports. */
export interface BenchFile {
  default: BenchEntry[]
  /** Called after the last of them. */
  close?(): Promise<void>
}

export interface Opened {
  run: Measurement
  /** Measured in turn with `run`, in the same process and unit: what the value is compared with. */
  baseline?: { what: string; run: Measurement }
  close?(): void | Promise<void>
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
