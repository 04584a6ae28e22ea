import { alliances, type Match } from '../scouting/types.ts'

/**
 * The alliances of the playoffs, as far as the matches show them: teams that play together, with those who play with one of
 * them in another match. Of four robots three play at a time, so that no single match names all. In the order of their first match.
 */
export function playoffAlliances(matches: readonly Match[]): string[][] {
  let found: string[][] = []
  for (const match of matches.filter(({ phase }) => phase === 'playoff')) {
    for (const alliance of alliances) {
      const teams = match[alliance].map(({ team }) => team)
      const [same, others] = [
        found.filter((each) => each.some((team) => teams.includes(team))),
        found.filter((each) => !each.some((team) => teams.includes(team))),
      ]
      const together = [...new Set([...same.flat(), ...teams])]
      // Where the first of them stood, so that their order stays.
      const place = same[0] ? found.indexOf(same[0]) : others.length
      found = others.toSpliced(Math.min(place, others.length), 0, together)
    }
  }
  return found
}
