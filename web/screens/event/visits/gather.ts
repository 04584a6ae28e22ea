import type { Change, Photo, PitVisit, Ranking, Row } from '../../../../src/model/scouting/types.ts'
import type { Arrived } from '../../../data/records.ts'

type Of<Kind extends Row['kind']> = Extract<Row, { kind: Kind }>

export interface TeamVisits {
  team: string
  /** Latest first: what was said last counts, what was said before stays to be read. */
  visits: { row: Of<'visit'>; body: PitVisit }[]
  changes: { row: Of<'change'>; body: Change }[]
}

export interface Gathered {
  teams: TeamVisits[]
  rankings: { row: Of<'ranking'>; body: Ranking }[]
  photos: ReadonlyMap<string, Photo>
}

const byNumber = new Intl.Collator('en', { numeric: true })

/** What was said at the pits and ranked in the stands, by team. What another record took the place of is left out. */
export function gather(records: readonly Arrived[]): Gathered {
  const replaced = new Set(records.flatMap(({ replaces }) => replaces ?? []))
  const teams = new Map<string, TeamVisits>()
  const teamOf = (team: string): TeamVisits => {
    const found = teams.get(team) ?? { team, visits: [], changes: [] }
    teams.set(team, found)
    return found
  }
  const photos = new Map<string, Photo>()
  const rankings: Gathered['rankings'] = []
  for (const { row } of records) {
    if (replaced.has(row.id)) continue
    if (row.kind === 'visit') teamOf(row.body.team).visits.unshift({ row, body: row.body })
    else if (row.kind === 'change') teamOf(row.body.team).changes.unshift({ row, body: row.body })
    else if (row.kind === 'ranking') rankings.unshift({ row, body: row.body })
    else if (row.kind === 'photo') photos.set(row.body.id, row.body)
  }
  return { teams: [...teams.values()].sort((a, b) => byNumber.compare(a.team, b.team)), rankings, photos }
}
