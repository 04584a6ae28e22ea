import type { TimedTrial } from '../../../../src/model/documents/timing.ts'
import { merge, same } from '../../../data/difference.ts'

/** The times of one part on this phone, and what the server had last. */
export interface Kept {
  trials: TimedTrial[]
  /** What the server was known to hold, and in which revision; null: it holds no record yet. */
  server: { revision: number; trials: TimedTrial[] } | null
}

const key = (id: string) => `cyclewright/timing/${id}`

export function readKept(id: string): Kept {
  try {
    return (JSON.parse(localStorage.getItem(key(id)) ?? 'null') as Kept | null) ?? { trials: [], server: null }
  } catch {
    return { trials: [], server: null }
  }
}

/** False where the phone would not keep them: then they are only on the screen. */
export function writeKept(id: string, kept: Kept): boolean {
  try {
    localStorage.setItem(key(id), JSON.stringify(kept))
    return true
  } catch {
    return false
  }
}

const runningKey = (id: string) => `cyclewright/watch/${id}`

/** When the watch that runs on this phone was started (ms since 1970), so that a page that comes again finds it running. */
export function readRunning(id: string, now: number): number | null {
  try {
    const at = Number(localStorage.getItem(runningKey(id)))
    // Nothing that can be kept takes longer: it was forgotten.
    return at > 0 && at <= now && now - at <= 600_000 ? at : null
  } catch {
    return null
  }
}

export function writeRunning(id: string, at: number | null): void {
  try {
    if (at === null) localStorage.removeItem(runningKey(id))
    else localStorage.setItem(runningKey(id), String(at))
  } catch {
    // The watch runs on as long as the page stays.
  }
}

const inOrder = (trials: readonly TimedTrial[]): TimedTrial[] =>
  [...trials].sort((a, b) => a.at.localeCompare(b.at) || a.id.localeCompare(b.id))

/** What is here together with what the server holds now: no time is lost, and what both changed stays as it is here. */
export function joined(kept: Kept, now: { revision: number; trials: TimedTrial[] }): Kept {
  const { merged } = merge(kept.server?.trials ?? [], kept.trials, now.trials)
  return { trials: inOrder(merged), server: now }
}

/** How many times differ from what the server holds: new, struck, or taken back. */
export function unsent({ trials, server }: Kept): number {
  const held = new Map((server?.trials ?? []).map((trial) => [trial.id, trial]))
  const changed = trials.filter((trial) => !same(held.get(trial.id), trial)).length
  const here = new Set(trials.map(({ id }) => id))
  return changed + [...held.keys()].filter((id) => !here.has(id)).length
}
