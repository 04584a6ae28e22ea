import type { Fact } from './facts.ts'

export interface Difference {
  key: string
  what: string
  /** Null: it does not say so. */
  first: string | null
  later: string | null
}

/** What two records say differently, in the order of the first, and how many lines are the same. */
export function differencesOf(first: readonly Fact[], later: readonly Fact[]): { differ: Difference[]; alike: number } {
  const other = new Map(later.map((fact) => [fact.key, fact]))
  const known = new Set(first.map(({ key }) => key))
  const differ = first
    .map(({ key, what, says }): Difference => ({ key, what, first: says, later: other.get(key)?.says ?? null }))
    .filter((each) => each.first !== each.later)
  const added = later
    .filter(({ key }) => !known.has(key))
    .map(({ key, what, says }): Difference => ({ key, what, first: null, later: says }))
  return { differ: [...differ, ...added], alike: first.length - differ.length }
}
