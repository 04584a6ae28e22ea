import { Uniforms } from '../../src/model/random/index.ts'
import type { Match, Side } from '../../src/model/scouting/types.ts'
import { teams } from './teams.ts'

/** 25 teams play 11 matches each: 275 places, so that of 46 matches with 276 places one is a surrogate's. */
export const each = 11
export const count = 46

const day = '2031-03-15'
const cycle = 7.5
const lunchAfter = 23

/** Minutes after nine. */
const startOf = (index: number): number => index * cycle + (index >= lunchAfter ? 60 : 0)

export function timeAt(minutes: number): string {
  const total = 9 * 60 + Math.floor(minutes)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${day}T${two(Math.floor(total / 60))}:${two(total % 60)}:${minutes % 1 === 0 ? '00' : '30'}+01:00`
}

/** Who plays in which match: nobody twice in a row, and with as many different others as it comes. */
function draw(seed: number): string[][] {
  const random = new Uniforms(seed)
  const played = new Map(teams.map(({ team }) => [team, 0]))
  const last = new Map(teams.map(({ team }) => [team, -9]))
  return Array.from({ length: count }, (_, index) => {
    const rested = teams.map(({ team }) => team).filter((team) => index - last.get(team)! > 1)
    const order = new Map(rested.map((team) => [team, played.get(team)! * 10 + random.next() * 12]))
    const chosen = rested.toSorted((a, b) => order.get(a)! - order.get(b)!).slice(0, 6)
    const lots = new Map(chosen.map((team) => [team, random.next()]))
    for (const team of chosen) {
      played.set(team, played.get(team)! + 1)
      last.set(team, index)
    }
    return chosen.toSorted((a, b) => lots.get(a)! - lots.get(b)!)
  })
}

/** Matches of each team, most and fewest first. */
function counted(matches: readonly string[][]): { team: string; plays: number }[] {
  return teams
    .map(({ team }) => ({ team, plays: matches.filter((match) => match.includes(team)).length }))
    .toSorted((a, b) => b.plays - a.plays)
}

/** The first draw in which all teams have eleven matches, and one of them a twelfth. */
function fairDraw(): { matches: string[][]; surrogate: string } {
  for (let seed = 1; ; seed++) {
    const matches = draw(seed)
    const plays = counted(matches)
    if (plays[0]!.plays === each + 1 && plays[1]!.plays === each && plays.at(-1)!.plays === each)
      return { matches, surrogate: plays[0]!.team }
  }
}

/** The qualification matches; the third match of the team that has one more does not count for it. */
export function schedule(): Match[] {
  const { matches, surrogate } = fairDraw()
  const own = matches.flatMap((match, index) => (match.includes(surrogate) ? [index] : []))
  return matches.map((match, index): Match => {
    const slots = match.map((team) => ({
      team,
      counts: !(team === surrogate && index === own[2]),
      state: 'expected' as const,
    }))
    return {
      id: `qualification-${index + 1}`,
      phase: 'qualification',
      number: index + 1,
      play: 1,
      time: timeAt(startOf(index)),
      red: slots.slice(0, 3) as Side,
      blue: slots.slice(3) as Side,
    }
  })
}
