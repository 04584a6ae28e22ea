import type { Assignment } from '../../scouting/types.ts'
import { seatKey, seats } from '../seats.ts'
import { choose, type Manner, type Roster, type Watching } from './choose.ts'
import { even, loadOf, spreadOf } from './even.ts'
import { Seating } from './seatThem.ts'
import { type Breaks, overlong } from './stints.ts'
import type { DealRequest, Dealt, Load } from './types.ts'

/** So many people watch six robots with these breaks: while `longest` matches are watched, each rests `rest` more. */
export const enoughFor = ({ longest, rest }: Breaks): number => Math.ceil((seats.length * (longest + rest)) / longest)

/**
 * Shares the seats of matches out among people: nobody twice in a match, a break after `longest` matches, loads that differ by one where
 * that can be, and another seat each time. Always the same for the same request.
 *
 * Several ways are tried, from long stints to the evenest load at every moment; each is evened out by handing single matches over. The one
 * that breaks the fewest breaks is taken, of those the evenest, of those the one with the longest stints.
 */
export function deal(request: DealRequest): Dealt {
  const { matches, people, kept = [], longest, rest } = request
  const ids = new Set(matches.map(({ id }) => id))
  const keptIn = new Map(matches.map(({ id }) => [id, new Map<string, string>()]))
  for (const { match, seat, person } of kept)
    if (person !== null && ids.has(match)) keptIn.get(match)!.set(seatKey(seat), person)
  const fixed = matches.map(({ id }) => new Set(keptIn.get(id)!.values()))
  const roster: Roster = {
    people,
    pauses: matches.map(({ pause }) => pause),
    fixed,
    wanted: fixed.map((there, index) => (matches[index]!.closed ? 0 : seats.length - there.size)),
    breaks: { longest, rest },
  }
  const closed = new Set(matches.flatMap(({ id, closed }) => (closed ? [id] : [])))
  const watching = best(roster)
  const assignments = seatAll(request, { watching, keptIn })
  return {
    assignments,
    loads: people.map((person) => loadFor(person, watching.get(person)!, roster)),
    broken: people.flatMap((person) =>
      overlong(watching.get(person)!, roster.pauses, roster.breaks).map((index) => ({
        person,
        match: matches[index]!.id,
      })),
    ),
    empty: assignments.filter(({ match, person }) => person === null && !closed.has(match)).length,
    enough: enoughFor(roster.breaks),
  }
}

function best(roster: Roster): Watching {
  const { longest } = roster.breaks
  const patiences = [...new Set([longest, Math.ceil(longest / 2), 2, 0])]
  const manners: Manner[] = patiences.flatMap((patience) => [false, true].map((shifts) => ({ patience, shifts })))
  const tried = manners.map((manner) => {
    const watching = choose(roster, manner)
    return { watching, broken: brokenIn(watching, roster) }
  })
  const least = Math.min(...tried.map(({ broken }) => broken))
  let found: { watching: Watching; spread: number } | null = null
  for (const { watching, broken } of tried) {
    if (broken > least) continue
    even(watching, roster)
    const spread = spreadOf(watching)
    if (!found || spread < found.spread) found = { watching, spread }
    if (spread <= 1) break
  }
  return found!.watching
}

const brokenIn = (watching: Watching, { pauses, breaks }: Roster): number =>
  [...watching.values()].reduce((sum, watched) => sum + overlong(watched, pauses, breaks).length, 0)

function seatAll(
  { matches, people }: DealRequest,
  of: { watching: Watching; keptIn: ReadonlyMap<string, ReadonlyMap<string, string>> },
): Assignment[] {
  const seating = new Seating()
  return matches.flatMap(({ id }, index): Assignment[] => {
    const taken = of.keptIn.get(id)!
    const there = new Set(taken.values())
    const newcomers = people.filter((person) => of.watching.get(person)![index] && !there.has(person))
    const placed = seating.seat(newcomers, taken)
    return seats.map((seat) => ({ match: id, seat, person: placed.get(seatKey(seat)) || null }))
  })
}

function loadFor(person: string, watched: readonly boolean[], { pauses, breaks }: Roster): Load {
  // The longest stint: the least length of which no match is beyond.
  let longest = 0
  while (overlong(watched, pauses, { longest, rest: breaks.rest }).length > 0) longest += 1
  return { person, matches: loadOf(watched), longest }
}
