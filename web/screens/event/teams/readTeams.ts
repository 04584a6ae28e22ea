import { words } from '../../../words/catalogue.ts'

export interface Team {
  team: string
  name?: string
}

/** As one edits them: a team a line, its number and then its name. */
export const writeTeams = (teams: readonly Team[]): string =>
  teams.map(({ team, name }) => (name === undefined ? team : `${team} ${name}`)).join('\n')

/** The teams of a text, and what is wrong in which line. Tabs, commas and semicolons separate as blanks do. */
export function readTeams(text: string): { teams: Team[]; problems: string[] } {
  const texts = words().event.teams
  const teams: Team[] = []
  const problems: string[] = []
  const lines = new Map<string, number>()
  text.split(/\r?\n/).forEach((raw, index) => {
    const line = raw.trim()
    if (line === '') return
    const [, first = '', rest = ''] = /^([^\s,;]+)[\s,;]*(.*)$/.exec(line) ?? []
    const team = first.toUpperCase()
    if (!/^[A-Z0-9-]{1,12}$/.test(team)) problems.push(texts.noTeam(index + 1, first))
    else if (lines.has(team)) problems.push(texts.twice(index + 1, team, lines.get(team)!))
    else if (rest.length > 200) problems.push(texts.longName(index + 1))
    else teams.push(rest === '' ? { team } : { team, name: rest })
    lines.set(team, lines.get(team) ?? index + 1)
  })
  return { teams, problems }
}
