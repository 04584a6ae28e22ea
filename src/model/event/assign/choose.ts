import { type Breaks, Stint } from './stints.ts'

export interface Roster {
  people: readonly string[]
  /** Before each match: whether there is a pause. */
  pauses: readonly boolean[]
  /** Per match who is in it already. */
  fixed: readonly ReadonlySet<string>[]
  /** Per match how many more are wanted. */
  wanted: readonly number[]
  breaks: Breaks
}

/** Who watches which match: per person, by the place of the match. */
export type Watching = Map<string, boolean[]>

/** How people are picked match by match. */
export interface Manner {
  /** Who is in the midst of a stint goes on unless somebody has watched so many matches less. */
  patience: number
  /** Everybody has times off by the clock, staggered; else whoever is rested may watch. */
  shifts: boolean
}

/**
 * Whether somebody is on duty by the clock: `longest` matches on, `rest` off, begun one after the other, so that with enough people at
 * least six are on duty at any time.
 */
function onDuty(match: number, person: number, { people, breaks: { longest, rest } }: Roster): boolean {
  const period = longest + rest
  return (match + Math.floor((person * period) / people.length)) % period < longest
}

/**
 * Goes through the matches in order. Who is in the midst of a stint goes on, as far as patience goes; the others follow by what they
 * have watched so far. Where too few are rested the least tired go on.
 */
export function choose(roster: Roster, { patience, shifts }: Manner): Watching {
  const { people, pauses, fixed, wanted, breaks } = roster
  const watching: Watching = new Map(people.map((person) => [person, pauses.map(() => false)]))
  const stints = new Map(people.map((person) => [person, new Stint(breaks)]))
  const loads = new Map(people.map((person) => [person, 0]))
  pauses.forEach((pause, index) => {
    if (pause) for (const stint of stints.values()) stint.pause()
    const free = people.filter((person) => !fixed[index]!.has(person))
    const least = Math.min(...free.map((person) => loads.get(person)!))
    const rank = (person: string): number[] => {
      const [stint, load] = [stints.get(person)!, loads.get(person)!]
      const goesOn = stint.going && load - least < patience
      const place = people.indexOf(person)
      const off = shifts && !onDuty(index, place, roster)
      return [stint.tired ? 1 : 0, stint.tired ? stint.length : 0, off ? 1 : 0, goesOn ? 0 : 1, load, place]
    }
    const ranks = new Map(free.map((person) => [person, rank(person)]))
    const chosen = new Set(free.toSorted((a, b) => firstOf(ranks.get(a)!, ranks.get(b)!)).slice(0, wanted[index]))
    for (const person of people) {
      const watches = chosen.has(person) || fixed[index]!.has(person)
      watching.get(person)![index] = watches
      stints.get(person)!.step(watches)
      if (watches) loads.set(person, loads.get(person)! + 1)
    }
  })
  return watching
}

function firstOf(a: readonly number[], b: readonly number[]): number {
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return a[index]! - b[index]!
  return 0
}
