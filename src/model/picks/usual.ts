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

const stepsIn = ({ inForce }: Protocol): SelectionStep[] =>
  inForce.flatMap(({ line }) => (line.kind === 'called' ? [line.step] : []))

/** What is asked about the selection as it is; before it has begun, about its beginning as it would be now. */
export function askOf(protocol: Protocol, of: { rules: SelectionRules; seeds: string[]; us: string }): PicksAsk {
  const { rules, seeds } = protocol.selection?.state ?? of
  return { rules, seeds, steps: stepsIn(protocol), us: of.us, aside: [...protocol.aside.keys()] }
}
