import type { Backup, BackupStore } from './types.ts'

const hour = 3_600_000
/** How often the newest copy is proven. */
const provenEvery = 24 * hour

const ageOf = (at: string, now: Date): number => now.getTime() - Date.parse(at)

/** What is due now, by the copies that there are (newest first). */
export function due(
  all: readonly Backup[],
  { every, now }: { every: number; now: Date },
): { copy: boolean; proof: boolean } {
  const [newest] = all.filter(({ manifest }) => manifest !== null)
  const proven = all
    .flatMap(({ proof }) => proof?.provenAt ?? [])
    .sort()
    .at(-1)
  return {
    // A minute's grace, so that a timer that comes a moment early does not wait a whole turn.
    copy: !newest || ageOf(newest.madeAt, now) >= every * hour - 60_000,
    proof: !proven || ageOf(proven, now) >= provenEvery - 60_000,
  }
}

export interface ScheduleOptions {
  /** Hours between copies; 0: none by itself. */
  every: number
  now?: () => Date
  /** How often it is looked whether something is due (ms). */
  look?: number
  failed: (error: unknown) => void
}

/** Makes copies while the program runs, and proves one a day. Returns how to end it, which waits for what is under way. */
export function scheduleBackups(backups: BackupStore | null, options: ScheduleOptions): () => Promise<void> {
  const { every, now = () => new Date(), look = 300_000, failed } = options
  if (backups === null || every === 0) return async () => {}
  let working: Promise<void> | undefined
  const work = async () => {
    try {
      const { copy, proof } = due(await backups.list(), { every, now: now() })
      if (copy) await backups.make('schedule')
      const [newest] = await backups.list()
      if (!proof || !newest) return
      const { proof: came } = (await backups.prove(newest.name)) ?? {}
      if (came && came.faults.length > 0)
        failed(new Error(`The copy ${newest.name} is not whole: ${came.faults.join('; ')}`))
    } catch (error) {
      failed(error)
    }
  }
  const turn = () => {
    working ??= work().finally(() => {
      working = undefined
    })
  }
  const timer = setInterval(turn, look)
  // A first copy soon after the start, but not in its way.
  const first = setTimeout(turn, Math.min(look, 20_000))
  timer.unref()
  first.unref()
  return async () => {
    clearInterval(timer)
    clearTimeout(first)
    await working
  }
}
