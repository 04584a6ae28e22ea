import type { Backup, BackupReason } from './types.ts'

/** How many copies of a kind are kept; those of the schedule besides by day and week. */
const newest: { readonly [reason in BackupReason]: number } = {
  schedule: 24,
  migration: 5,
  restore: 5,
  button: 10,
  command: 10,
}
const days = 14
const weeks = 10

const dayOf = (at: string): string => at.slice(0, 10)
const weekOf = (at: string): string => String(Math.floor((Date.parse(at) / 86_400_000 + 3) / 7))

/** The newest of each of the newest `most` days or weeks. */
function newestOfEach(copies: readonly Backup[], of: (at: string) => string, most: number): Backup[] {
  const each = new Map<string, Backup>()
  for (const copy of copies) if (!each.has(of(copy.madeAt))) each.set(of(copy.madeAt), copy)
  return [...each.values()].slice(0, most)
}

/**
 * Names of the copies that may go. `all` is newest first. Copies without a manifest are somebody else's doing and stay, and so does
 * the newest one that was proven.
 */
export function dispensable(all: readonly Backup[]): string[] {
  const kept = new Set<string>()
  for (const [reason, most] of Object.entries(newest))
    for (const { name } of all.filter(({ manifest }) => manifest?.reason === reason).slice(0, most)) kept.add(name)
  const scheduled = all.filter(({ manifest }) => manifest?.reason === 'schedule')
  for (const { name } of newestOfEach(scheduled, dayOf, days)) kept.add(name)
  for (const { name } of newestOfEach(scheduled, weekOf, weeks)) kept.add(name)
  const proven = all.find(({ proof }) => proof && proof.faults.length === 0)
  return all
    .filter(({ name, manifest }) => manifest && !kept.has(name) && name !== proven?.name)
    .map(({ name }) => name)
}
