import type { Happening } from '../types.ts'

export interface Interval {
  from: number
  to: number
}

const pairs = {
  unseen: 'seen',
  stopped: 'running',
  defending: 'free',
  defended: 'released',
} as const

export type State = keyof typeof pairs

/**
 * When a robot was in a state: from the press that begins it to the one that ends it. What nobody ended lasts to the end;
 * what nobody began did so with the recording.
 *
 * @param within seconds since the match's start between which intervals count
 */
export function intervalsOf(timeline: readonly Happening[], state: State, within: Interval): Interval[] {
  const found: Interval[] = []
  let from: number | null = null
  let begun = false
  for (const { what, elapsed } of timeline) {
    if (what === state) from ??= elapsed
    else if (what === pairs[state]) {
      if (from !== null || !begun) found.push({ from: from ?? within.from, to: elapsed })
      from = null
    } else continue
    begun = true
  }
  if (from !== null) found.push({ from, to: within.to })
  return found
    .map((each) => ({ from: Math.max(each.from, within.from), to: Math.min(each.to, within.to) }))
    .filter((each) => each.to > each.from)
}

/** The stretch without what others cover. */
export function lessAll(of: Interval, others: readonly Interval[]): Interval[] {
  let left = [of]
  for (const other of others)
    left = left.flatMap(({ from, to }) =>
      other.to <= from || other.from >= to
        ? [{ from, to }]
        : [
            ...(other.from > from ? [{ from, to: other.from }] : []),
            ...(other.to < to ? [{ from: other.to, to }] : []),
          ],
    )
  return left
}

export const lengthOf = (intervals: readonly Interval[]): number =>
  intervals.reduce((sum, { from, to }) => sum + to - from, 0)

export const contains = (intervals: readonly Interval[], at: number): boolean =>
  intervals.some(({ from, to }) => at >= from && at < to)

/** Seconds of a stretch that lie in any of them. */
export const overlap = (of: Interval, others: readonly Interval[]): number =>
  lengthOf([of]) - lengthOf(lessAll(of, others))
