import { checkGame, checkOption, within } from '../../model/documents/index.ts'
import type { Path, Problem } from '../../model/errors.ts'
import type { SeasonRequest } from '../../model/match/scores/types.ts'
import { ApiError } from '../errors.ts'

/** What a season's documents, teams and matches say against each other. @throws ApiError 'malformed' for teams and matches */
export function checkSeason({ game, teams, matches }: SeasonRequest): Problem[] {
  const known = new Set<string>()
  for (const [t, { team, draws }] of teams.entries()) {
    if (known.has(team)) throw refused(['teams', t, 'team'], `team “${team}” stands twice among the teams`)
    known.add(team)
    if (draws.length !== teams[0]!.draws.length)
      throw refused(
        ['teams', t, 'draws'],
        `all teams have as many draws: the first has ${teams[0]!.draws.length}, “${team}” ${draws.length}`,
      )
  }
  for (const [m, { ours, theirs }] of matches.entries()) {
    const six = [...ours, ...theirs]
    for (const [k, team] of six.entries()) {
      const path: Path = ['matches', m, k < 3 ? 'ours' : 'theirs', k % 3]
      if (!known.has(team)) throw refused(path, `there is no team “${team}” among the teams`)
      if (six.indexOf(team) < k) throw refused(path, `team “${team}” plays twice in this match`)
    }
  }
  return [
    ...within(['game'], checkGame(game)),
    ...teams.flatMap(({ draws }, t) =>
      draws.flatMap((option, d) => within(['teams', t, 'draws', d], checkOption(game, option))),
    ),
  ]
}

const refused = (path: Path, message: string) => new ApiError({ code: 'malformed', message, path })
