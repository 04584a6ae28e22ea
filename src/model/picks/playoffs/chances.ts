import type { Strengths } from '../order/index.ts'
import { triosOf } from '../order/index.ts'
import { bracketOf, type Format } from './bracket.ts'
import { type BracketStanding, playBracket, TieLuck } from './play.ts'

export interface PlayoffRequest {
  strengths: Strengths
  format: Format
  /** Robots of each alliance, in the order of the alliances; of more than three the best three play. */
  alliances: readonly (readonly string[])[]
  /** Games that are played already. */
  standing?: BracketStanding
  runs: number
  seed: number
}

export interface EventChance {
  /** Number of the alliance. */
  alliance: number
  /** Who plays. */
  robots: string[]
  /** Chance to win the event, and to reach the final. */
  wins: number
  finals: number
  /** Standard error of the chance to win, by the luck of the runs. */
  error: number
}

/** Chances of all alliances: brackets played again and again, each with one draw of what is not known of the teams. */
export function playoffChances({
  strengths,
  format,
  alliances,
  standing = [],
  runs,
  seed,
}: PlayoffRequest): EventChance[] {
  const ready = alliances.map((members) => strengths.of(members))
  const { draws } = strengths.sibling
  const pairs = ready.map((a, i) => ready.map((b, j) => (i < j ? strengths.sibling.chances(a.traits, b.traits) : null)))
  const ties = bracketOf({ ...format, alliances: alliances.length })
  const luck = new TieLuck(seed)
  const counts = ready.map(() => ({ wins: 0, finals: 0 }))
  for (let run = 0; run < runs; run++) {
    const draw = run % draws
    const chance = (a: number, b: number) => pairs[a - 1]?.[b - 1]?.[draw] as number
    const { winner, finalists } = playBracket(ties, chance, { luck, run, standing })
    ;(counts[winner - 1] as (typeof counts)[number]).wins++
    for (const each of finalists) (counts[each - 1] as (typeof counts)[number]).finals++
  }
  return counts.map(({ wins, finals }, k) => ({
    alliance: k + 1,
    robots: (ready[k] as (typeof ready)[number]).teams,
    wins: wins / runs,
    finals: finals / runs,
    error: countedError(wins, runs),
  }))
}

export interface Substitution {
  /** The three that play. */
  robots: string[]
  wins: number
  error: number
}

/** Which three of an alliance of four play best: the chance to win the event with each three, the others playing as they do, in the same luck. */
export function substitutions(request: PlayoffRequest, alliance: number): Substitution[] {
  const members = request.alliances[alliance - 1] as readonly string[]
  return triosOf(members)
    .map((robots): Substitution => {
      const alliances = request.alliances.map((own, k) => (k === alliance - 1 ? robots : own))
      const { wins, error } = playoffChances({ ...request, alliances })[alliance - 1] as EventChance
      return { robots, wins, error }
    })
    .sort((a, b) => b.wins - a.wins)
}

/** Of a counted share: two more of each kind, so that an error is never 0 (Agresti & Coull 1998). */
export function countedError(count: number, of: number): number {
  const near = (count + 2) / (of + 4)
  return Math.sqrt((near * (1 - near)) / (of + 4))
}
