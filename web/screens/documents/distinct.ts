import type { RevisionSummary } from '../../../src/store/types.ts'
import { restoredFrom } from './noteWords.ts'

/**
 * Revisions that say something of their own, to choose among: of one and those that restored it, the latest alone.
 * What a reading names stays, and the order.
 */
export function distinct(revisions: readonly RevisionSummary[], named: ReadonlySet<number>): RevisionSummary[] {
  const byNumber = new Map(revisions.map((entry) => [entry.revision, entry]))
  const first = (entry: RevisionSummary): number => {
    const from = byNumber.get(restoredFrom(entry.note) ?? Number.NaN)
    return from && from.revision < entry.revision ? first(from) : entry.revision
  }
  const latest = new Map<number, number>()
  for (const entry of revisions) latest.set(first(entry), Math.max(latest.get(first(entry)) ?? 0, entry.revision))
  return revisions.filter((entry) => named.has(entry.revision) || latest.get(first(entry)) === entry.revision)
}
