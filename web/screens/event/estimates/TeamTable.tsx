import { useState } from 'react'
import { Link } from 'wouter'
import type { Estimate, TeamEstimate } from '../../../../src/model/scouting/estimates/types.ts'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import { nameFrom, type TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import { points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { Interval } from './Interval.tsx'
import { NumberMade } from './made/NumberMade.tsx'
import { most, sideBySideAddress } from './sideBySide/chosen.ts'

/** What teams can be set side by side by; higher is better, but for the time of a trip. */
const columns = ['points', 'attempts', 'trip', 'finishPoints', 'autonomousPoints'] as const
type Column = (typeof columns)[number]

const estimateIn = (team: TeamEstimate, column: Column): Estimate | null =>
  column === 'trip' ? (team.trip?.median ?? null) : team[column]

function sorted(teams: readonly TeamEstimate[], by: Column | 'team'): TeamEstimate[] {
  if (by === 'team') return teams.toSorted((a, b) => a.team.localeCompare(b.team, 'en', { numeric: true }))
  const sign = by === 'trip' ? 1 : -1
  const value = (team: TeamEstimate) => estimateIn(team, by)?.mean ?? Number.NaN
  return teams.toSorted((a, b) => sign * (value(a) - value(b)) || a.team.localeCompare(b.team))
}

export const teamAddress = (event: string, team: string) => `/event/${event}/estimates?team=${encodeURIComponent(team)}`

/** All teams side by side, each number with where it lies. */
export function TeamTable({ page, teams }: { page: EventPage; teams: readonly TeamEstimate[] }) {
  const texts = words().estimates
  const [by, setBy] = useState<Column | 'team'>('points')
  const beside = words().sideBySide
  const [chosen, setChosen] = useState<readonly string[]>([])
  const toggle = (team: string) =>
    setChosen(chosen.includes(team) ? chosen.filter((other) => other !== team) : [...chosen, team])
  const names = new Map(page.event.body.teams.map(({ team, name }) => [team, name]))
  const shown = columns.filter((column) => teams.some((team) => estimateIn(team, column)))
  const ends = new Map(
    shown.map((column) => [column, Math.max(...teams.map((team) => estimateIn(team, column)?.interval95[1] ?? 0))]),
  )
  const header = (column: Column | 'team') => (
    <th
      key={column}
      scope="col"
      className={column === 'team' ? '' : 'figure'}
      aria-sort={by === column ? (column === 'team' || column === 'trip' ? 'ascending' : 'descending') : 'none'}
    >
      <button type="button" className="opens" onClick={() => setBy(column)}>
        {texts.columns[column]}
      </button>
    </th>
  )
  return (
    <>
      <p className="row no-print">
        <Link href={sideBySideAddress(page.event.id, chosen)} className="plain-button">
          {beside.show(chosen.length)}
        </Link>
        <span className="soft small">{chosen.length >= most ? beside.full : beside.chooseHow}</span>
      </p>
      <div className="scroll" tabIndex={0} role="region" aria-label={words().event.tableOf(texts.title)}>
        <table className="tide estimates-table">
          <thead>
            <tr>
              {header('team')}
              <th scope="col" className="figure">
                {texts.matches}
              </th>
              {shown.map(header)}
            </tr>
          </thead>
          <tbody>
            {sorted(teams, by).map((team) => (
              <tr key={team.team}>
                <th scope="row">
                  <input
                    type="checkbox"
                    className="no-print"
                    aria-label={beside.choice(team.team)}
                    checked={chosen.includes(team.team)}
                    disabled={chosen.length >= most && !chosen.includes(team.team)}
                    onChange={() => toggle(team.team)}
                  />{' '}
                  <Link href={teamAddress(page.event.id, team.team)}>{team.team}</Link> {names.get(team.team)}
                  {team.neverSeen && <span className="slot-mark">{texts.neverSeen}</span>}
                </th>
                <td className="figure">{team.matches}</td>
                {shown.map((column) => {
                  const estimate = estimateIn(team, column)
                  if (!estimate) return <td key={column} />
                  const [low, high] = estimate.interval80
                  return (
                    <td key={column} className="figure">
                      <NumberMade page={page} of={team} what={{ kind: column }}>
                        {points(estimate.mean)}
                      </NumberMade>
                      <Interval
                        of={estimate}
                        most={ends.get(column)!}
                        label={texts.between(points(low), points(high))}
                      />
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <TableDownload title={texts.title} table={() => estimatesTable(sorted(teams, by))} />
    </>
  )
}

function estimatesTable(teams: readonly TeamEstimate[]): TableData {
  const texts = words().estimates
  const number = (name: string, title: string, unit?: string) => ({
    name,
    title,
    type: 'number' as const,
    ...(unit && { unit }),
  })
  return {
    name: nameFrom(texts.title),
    title: texts.title,
    columns: [
      { name: 'team', title: texts.columns.team, type: 'string' },
      { name: 'matches', title: texts.matches, type: 'integer' },
      ...columns.flatMap((column) => [
        number(nameFrom(column), texts.columns[column], column === 'trip' ? 's' : undefined),
        number(`${nameFrom(column)}_low_80`, texts.low(texts.columns[column])),
        number(`${nameFrom(column)}_high_80`, texts.high(texts.columns[column])),
      ]),
    ],
    rows: teams.map((team) => [
      team.team,
      team.matches,
      ...columns.flatMap((column) => {
        const estimate = estimateIn(team, column)
        return estimate ? [estimate.mean, ...estimate.interval80] : [null, null, null]
      }),
    ]),
  }
}
