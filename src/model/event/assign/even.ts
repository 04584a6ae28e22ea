import type { Roster, Watching } from './choose.ts'
import { overlong } from './stints.ts'

export const loadOf = (watched: readonly boolean[]): number => watched.filter(Boolean).length

/** Most less fewest matches that anybody watches. */
export function spreadOf(watching: Watching): number {
  const loads = [...watching.values()].map(loadOf)
  return loads.length === 0 ? 0 : Math.max(...loads) - Math.min(...loads)
}

/**
 * Hands matches on from who watches much to who watches little, through others where that has to be, as long as it breaks no further
 * break. Changes `watching`.
 */
export function even(watching: Watching, roster: Roster): void {
  const load = (person: string) => loadOf(watching.get(person)!)
  // Each chain brings the squares of the loads down, so that it ends.
  for (;;) {
    const byLoad = roster.people.toSorted(
      (a, b) => load(b) - load(a) || roster.people.indexOf(a) - roster.people.indexOf(b),
    )
    const least = load(byLoad.at(-1)!)
    const chain = byLoad
      .filter((person) => load(person) - least > 1)
      .reduce<Hand[] | null>((found, from) => found ?? chainFrom(from, watching, roster), null)
    if (!chain) return
    // From its far end: who has handed one match on can take the other all the more.
    for (const { from, to, place } of chain.toReversed()) {
      watching.get(from)![place] = false
      watching.get(to)![place] = true
    }
  }
}

interface Hand {
  from: string
  to: string
  /** Of the match. */
  place: number
}

/** The shortest chain of hand-overs from a person to one with at least two matches less. */
function chainFrom(start: string, watching: Watching, roster: Roster): Hand[] | null {
  const most = loadOf(watching.get(start)!) - 2
  const cameBy = new Map<string, Hand | null>([[start, null]])
  for (const from of cameBy.keys()) {
    for (const to of roster.people) {
      const place = cameBy.has(to) ? -1 : placeFor(watching, roster, { from, to })
      if (place < 0) continue
      cameBy.set(to, { from, to, place })
      if (loadOf(watching.get(to)!) <= most) return wayTo(to, cameBy)
    }
  }
  return null
}

function wayTo(end: string, cameBy: ReadonlyMap<string, Hand | null>): Hand[] {
  const way: Hand[] = []
  for (let hand = cameBy.get(end); hand; hand = cameBy.get(hand.from)) way.unshift(hand)
  return way
}

/** A match that one can hand to the other, below 0 where there is none. */
function placeFor(
  watching: Watching,
  { fixed, pauses, breaks }: Roster,
  { from, to }: { from: string; to: string },
): number {
  const [theirs, ours] = [watching.get(from)!, watching.get(to)!]
  const before = overlong(ours, pauses, breaks).length
  return theirs.findIndex((watches, index) => {
    if (!watches || ours[index] || fixed[index]!.has(from)) return false
    return overlong(ours.with(index, true), pauses, breaks).length <= before
  })
}
