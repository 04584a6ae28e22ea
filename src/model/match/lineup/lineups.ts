import type { Option } from '../../documents/types.ts'
import type { Lineup, LineupRequest } from './types.ts'

/** A robot in one of its roles. */
export const inRole = (option: Option, role: Option['role']): Option => ({ ...option, role })

/** Every way to give each robot one of its roles. */
export function allLineups({ roles }: Pick<LineupRequest, 'roles'>): Lineup[] {
  const [first, second, third] = roles.map((own) => own.map((_, k) => k)) as [number[], number[], number[]]
  return first.flatMap((a) => second.flatMap((b) => third.map((c): Lineup => [a, b, c])))
}

/** The golden ratio's fraction: its multiples fill (0, 1) as evenly as can be (Weyl 1916). */
export const golden = 0.618033988749895

/** The rivals' setting that a match meets: each as often as its weight says, evenly among the matches. */
export function rivalOf({ theirs, weights }: Pick<LineupRequest, 'theirs' | 'weights'>, match: number): number {
  const total = theirs.reduce((sum, _, k) => sum + (weights?.[k] ?? 1), 0)
  let place = (((match + 1) * golden) % 1) * total
  for (let k = 0; k < theirs.length - 1; k++) {
    place -= weights?.[k] ?? 1
    if (place < 0) return k
  }
  return theirs.length - 1
}
