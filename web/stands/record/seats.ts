import type { Alliance, Assignment, Match, Position, Seat } from '../../../src/model/scouting/types.ts'

export const positions: readonly Position[] = [1, 2, 3]
export const bothAlliances: readonly Alliance[] = ['red', 'blue']

/** The six seats of a match, in the order in which they are read. */
export const seats: readonly Seat[] = bothAlliances.flatMap((alliance) =>
  positions.map((position) => ({ alliance, position })),
)

export const sameSeat = (a: Seat, b: Seat): boolean => a.alliance === b.alliance && a.position === b.position

/** The robot at a seat: a slot may name its position, and otherwise has that of its place in the list. */
export function slotAt(match: Match, { alliance, position }: Seat) {
  const side = match[alliance]
  return side.find((slot) => slot.position === position) ?? side[position - 1]!
}

/** Whose seat it is; null: nobody's. */
export function watcherOf(assignments: readonly Assignment[], match: string, seat: Seat): string | null {
  return assignments.find((each) => each.match === match && sameSeat(each.seat, seat))?.person ?? null
}

/** Seats that somebody took over here and that the schedule does not know of yet. */
export function withTakeovers(
  assignments: readonly Assignment[],
  taken: readonly (Seat & { match: string })[],
  person: string,
): Assignment[] {
  const is = (a: Assignment) => taken.some((seat) => seat.match === a.match && sameSeat(a.seat, seat))
  return [
    ...assignments.filter((each) => !is(each)),
    ...taken.map(({ match, alliance, position }) => ({ match, seat: { alliance, position }, person })),
  ]
}

/** A match whose time is this long past is not the next one any more, whoever missed it (ms). */
const gone = 20 * 60_000

/** Matches after the last one that this phone has a record of, which are not over and have no later play. */
export function comingMatches(
  matches: readonly Match[],
  { recorded, now }: { recorded: ReadonlySet<string>; now: number },
): Match[] {
  const last = matches.findLastIndex(({ id }) => recorded.has(id))
  const voided = new Set(matches.flatMap(({ voids }) => (voids === undefined ? [] : [voids])))
  return matches
    .slice(last + 1)
    .filter(
      ({ id, red, blue, time }) =>
        !voided.has(id) &&
        [...red, ...blue].some(({ state }) => state === 'expected') &&
        (time === undefined || Date.parse(time) >= now - gone),
    )
}

/**
 * A person's next seat: the first of their seats after the last match that this phone has a record of, that has no record yet
 * and is not long over.
 */
export function nextSeat(
  { matches, assignments }: { matches: readonly Match[]; assignments: readonly Assignment[] },
  { person, recorded, now }: { person: string; recorded: ReadonlySet<string>; now: number },
): { match: Match; seat: Seat } | null {
  for (const match of comingMatches(matches, { recorded, now })) {
    const own = assignments.find((each) => each.match === match.id && each.person === person)
    if (own) return { match, seat: own.seat }
  }
  return null
}

/** The match that goes on or comes next, as far as results tell; the first where all are over. */
export const firstUnplayed = (matches: readonly Match[]): Match | undefined =>
  matches.find(({ red, blue }) => [...red, ...blue].some(({ state }) => state === 'expected')) ?? matches[0]
