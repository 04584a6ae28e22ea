import type { PicksAsk } from './prepared.ts'
import type { Protocol } from './protocol/index.ts'
import type { SelectionRules, SelectionStep } from './selection/index.ts'

/** Two alliances of three. */
export const fewestTeams = 6

/** What is usual, by what the event says of its playoffs. Common practice where it says nothing; the event's rules decide. */
export function usualRules(of: {
  playoff?: { alliances?: number | undefined; size?: number | undefined } | undefined
  teams: readonly unknown[]
}): SelectionRules {
  const { playoff, teams } = of
  const alliances = playoff?.alliances ?? Math.max(2, Math.min(8, Math.floor(teams.length / 4)))
  return { alliances, size: playoff?.size ?? 4, serpentine: true, captainsInvitable: true, afterDeclining: 'captain' }
}

/** All teams by the ranking as far as it goes, the others behind in the event's order. */
export function seedsBy(teams: readonly string[], ranked: readonly string[]): string[] {
  return [...ranked, ...teams.filter((team) => !ranked.includes(team))]
}

/** Whoever is no captain by these ranks, taken as the last one: whether it will be is for the matches to say. */
export function asCaptain(seeds: readonly string[], { us, alliances }: { us: string; alliances: number }): string[] {
  const place = seeds.indexOf(us)
  if (place >= 0 && place < alliances) return [...seeds]
  const others = seeds.filter((team) => team !== us)
  return [...others.slice(0, alliances - 1), us, ...others.slice(alliances - 1)]
}

const stepsIn = ({ inForce }: Protocol): SelectionStep[] =>
  inForce.flatMap(({ line }) => (line.kind === 'called' ? [line.step] : []))

/**
 * What is asked about the selection as it is; before it has begun, about its beginning as it would be now. `supposed`: with us as the last
 * captain, where we would be none.
 */
export function askOf(
  protocol: Protocol,
  of: { rules: SelectionRules; seeds: string[]; us: string },
): PicksAsk & { supposed: boolean } {
  const { us } = of
  const begun = protocol.selection?.state
  const { rules } = begun ?? of
  const seeds = begun?.seeds ?? asCaptain(of.seeds, { us, alliances: rules.alliances })
  const supposed = !begun && of.seeds.indexOf(us) >= rules.alliances
  return { rules, seeds, steps: stepsIn(protocol), us, aside: [...protocol.aside.keys()], supposed }
}
