import { TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Criterion, EventRanking, RankingRow } from '../../../../src/model/event/ranking/types.ts'
import { useRanking } from '../../../data/events.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import { nameFrom, type TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, plain } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { allianceName, matchName } from '../names.ts'
import { Shares } from './Shares.tsx'

export function criterionName(criterion: Criterion, game: Pick<Game, 'goals'>): string {
  const texts = words().event.ranking
  if (typeof criterion === 'string') return texts.criteria[criterion]
  return texts.piecesAt(listed(criterion.pieces.map((id) => game.goals.find((goal) => goal.id === id)?.name ?? id)))
}

/** The ranking by the game's rules; every row can be opened. */
export function RankingPart(page: EventPage) {
  const texts = words().event.ranking
  const [typed, setTyped] = useState('1')
  const seed = /^\d{1,9}$/.test(typed) ? Number(typed) : null
  const ranking = useRanking(page.event.id, seed ?? 1)
  if (ranking.error && !ranking.data)
    return <Trouble title={texts.trouble} error={ranking.error} retry={() => void ranking.refetch()} />
  if (!ranking.data) return <Loading what={texts.what} />
  const { data } = ranking
  return (
    <section className="sheet stack" aria-labelledby="ranking">
      <h2 id="ranking">{words().event.parts.ranking}</h2>
      {data.counted === 0 || data.rows.length === 0 ? (
        <Empty title={texts.empty}>
          <p>{texts.emptyHow}</p>
        </Empty>
      ) : (
        <>
          <p>
            {texts.from(data.counted, data.waiting, data.voided)} {texts[data.per]}
          </p>
          <RankingTable page={page} ranking={data} />
          <TableDownload title={words().event.parts.ranking} table={() => rankingTable(data, page.game)} />
          {data.rows.some(({ byLot }) => byLot) && (
            <div className="row">
              <TextInput
                label={texts.seed}
                description={texts.seedHelp}
                inputMode="numeric"
                value={typed}
                error={seed === null ? texts.noSeed : null}
                onChange={(event) => setTyped(event.currentTarget.value.trim())}
              />
            </div>
          )}
          <Untold page={page} untold={data.untold} criteria={data.criteria} />
          <p className="soft">{texts.practice}</p>
        </>
      )}
    </section>
  )
}

function RankingTable({ page, ranking }: { page: EventPage; ranking: EventRanking }) {
  const texts = words().event.ranking
  const [open, setOpen] = useState<string | null>(null)
  const names = new Map(page.event.body.teams.map(({ team, name }) => [team, name]))
  const { criteria, rows } = ranking
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={words().event.tableOf(words().event.parts.ranking)}>
      <table className="tide">
        <thead>
          <tr>
            <th scope="col" className="figure">
              {texts.rank}
            </th>
            <th scope="col">{texts.team}</th>
            {criteria.map((criterion) => (
              <th key={JSON.stringify(criterion)} scope="col" className="figure">
                {criterionName(criterion, page.game)}
              </th>
            ))}
            <th scope="col" className="figure">
              {texts.record}
            </th>
            <th scope="col" className="figure">
              {texts.played}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.flatMap((row) => [
            <tr key={row.team}>
              <td className="figure">{row.rank}</td>
              <th scope="row">
                <button
                  type="button"
                  className="opens"
                  aria-expanded={open === row.team}
                  onClick={() => setOpen(open === row.team ? null : row.team)}
                >
                  {row.team}
                </button>{' '}
                {names.get(row.team)}
                {notes(row, criteria, page.game).map((note) => (
                  <span key={note} className="slot-mark">
                    {note}
                  </span>
                ))}
              </th>
              {row.values.map((value, index) => (
                <td key={JSON.stringify(criteria[index])} className="figure">
                  {index === 0 ? plain(value, 2) : plain(value, 1)}
                </td>
              ))}
              <td className="figure">{texts.wonTiedLost(row.won, row.tied, row.lost)}</td>
              <td className="figure">{row.played}</td>
            </tr>,
            ...(open === row.team
              ? [
                  <tr key={`${row.team} open`}>
                    <td />
                    <td colSpan={criteria.length + 3}>
                      <Shares page={page} row={row} ranking={ranking} />
                    </td>
                  </tr>,
                ]
              : []),
          ])}
        </tbody>
      </table>
    </div>
  )
}

function notes(row: RankingRow, criteria: readonly Criterion[], game: Game): string[] {
  const texts = words().event.ranking
  return [
    ...(row.byLot ? [texts.byLot] : []),
    ...(row.decidedBy !== null && row.decidedBy > 0
      ? [texts.decided(criterionName(criteria[row.decidedBy]!, game))]
      : []),
    ...(row.absent > 0 ? [texts.absent(row.absent)] : []),
    ...(row.disqualified > 0 ? [texts.disqualified(row.disqualified)] : []),
    ...(row.apart > 0 ? [texts.apart(row.apart)] : []),
  ]
}

function Untold(props: { page: EventPage; untold: EventRanking['untold']; criteria: readonly Criterion[] }) {
  const texts = words().event.ranking
  const { page, untold } = props
  if (untold.length === 0) return null
  return (
    <details>
      <summary>{texts.untold(untold.length)}</summary>
      <ul>
        {untold.map(({ match, alliance, bonuses, criteria }) => {
          const of = page.schedule.matches.find((each) => each.match.id === match)?.match
          const lacking = [
            ...bonuses.map((id) => page.game.bonuses.find((bonus) => bonus.id === id)?.name ?? id),
            ...criteria.map((index) => criterionName(props.criteria[index]!, page.game)),
          ]
          return (
            <li key={`${match} ${alliance}`}>
              {texts.lacks(of ? matchName(of) : match, allianceName(alliance), listed(lacking))}
            </li>
          )
        })}
      </ul>
    </details>
  )
}

function rankingTable({ rows, criteria, per }: EventRanking, game: Game): TableData {
  const texts = words().event.ranking
  return {
    name: 'ranking',
    title: words().event.parts.ranking,
    columns: [
      { name: 'rank', title: texts.rank, type: 'integer' },
      { name: 'team', title: texts.team, type: 'string' },
      ...criteria.map((criterion) => {
        const key = typeof criterion === 'string' ? criterion : `pieces_${criterion.pieces.join('_')}`
        const name = nameFrom(key.replaceAll(/[A-Z]/g, '_$&'))
        return {
          name: per === 'match' ? `${name}_per_match` : name,
          title: criterionName(criterion, game),
          type: 'number' as const,
        }
      }),
      ...(['won', 'tied', 'lost', 'played'] as const).map((name) => ({
        name,
        title: texts.counts[name],
        type: 'integer' as const,
      })),
      { name: 'drawn_by_lot', title: texts.byLot, type: 'boolean' },
    ],
    rows: rows.map(({ rank, team, values, won, tied, lost, played, byLot }) => [
      rank,
      team,
      ...values,
      won,
      tied,
      lost,
      played,
      byLot,
    ]),
  }
}
