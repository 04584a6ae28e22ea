import { Link } from 'wouter'
import type { Match } from '../../../../src/model/scouting/types.ts'
import { pointsCell } from '../../../charts/cells.ts'
import { DotPlot } from '../../../charts/DotPlot.tsx'
import { Figure } from '../../../charts/Figure.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { quantileDots } from '../../../charts/quantileDots.ts'
import { sideColour } from '../../../charts/RobotSign.tsx'
import { useForecast } from '../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, percent } from '../../../words/format.ts'
import { chanceError, chanceValue, pointsValue } from '../../match/said.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'
import type { EventPage } from '../EventFrame.tsx'
import { KeptForecast } from '../forecasts/KeptForecast.tsx'
import { allianceName, matchName } from '../names.ts'
import { teamAddress } from './TeamTable.tsx'

export const forecastAddress = (event: string, match: string) =>
  `/event/${event}/estimates?match=${encodeURIComponent(match)}`

const sides = ['ours', 'theirs'] as const
const alliances = ['red', 'blue'] as const

/** How a match would end, its robots played as they were seen. */
export function ForecastPart({ page, id }: { page: EventPage; id: string }) {
  const texts = words().estimates
  const match = page.schedule.matches.find((each) => each.match.id === id)?.match
  const back = <Link href={`/event/${page.event.id}/estimates`}>{texts.allTeams}</Link>
  return (
    <section className="stack" aria-labelledby="forecast">
      <p className="small no-print">{back}</p>
      {match ? (
        <OfMatch page={page} match={match} />
      ) : (
        <Empty title={texts.noMatch}>
          <p>{texts.noMatchHow}</p>
        </Empty>
      )}
    </section>
  )
}

function OfMatch({ page, match }: { page: EventPage; match: Match }) {
  const texts = words().estimates
  const { letters, scores, bonuses } = words().match
  const forecast = useForecast(page.event.id, match.id)
  const title = texts.forecastOf(matchName(match))
  if (forecast.error && !forecast.data)
    return <Trouble title={texts.noForecast} error={forecast.error} retry={() => void forecast.refetch()} />
  if (!forecast.data) return <Loading what={texts.whatForecast} />
  const { report, records, neverSeen, kept } = forecast.data
  const names = alliances.map(allianceName)
  const rows = sides.map((side, index) => ({
    id: side,
    name: names[index]!,
    distribution: report.distributions[side],
    mean: report.score[side].mean,
    mark: { letter: letters[side], colour: sideColour(side) },
  }))
  const [better, chance] =
    report.win.probability >= report.loss.probability ? [names[0]!, report.win] : [names[1]!, report.loss]
  return (
    <div className="sheet stack">
      <h2 id="forecast">{title}</h2>
      {!kept && <KeptForecast event={page.event.id} match={match.id} kept={kept} />}
      <p className="answer">{texts.wins(better, percent(chance.probability), chanceError(chance))}</p>
      {kept && <KeptForecast event={page.event.id} match={match.id} kept={kept} />}
      <ul className="forecast-sides">
        {alliances.map((alliance, index) => (
          <li key={alliance} className={`of-${alliance}`}>
            <strong>{names[index]}</strong>{' '}
            {match[alliance].map(({ team }, place) => (
              <span key={team}>
                {place > 0 && ', '}
                <Link href={teamAddress(page.event.id, team)}>{team}</Link>
              </span>
            ))}
          </li>
        ))}
      </ul>
      {neverSeen.length > 0 && <p>{texts.someNeverSeen(listed(neverSeen))}</p>}
      <Figure
        title={texts.scores}
        table={{
          head: [scores.match, ...names],
          rows: Array.from({ length: 20 }, (_, index) => [
            index + 1,
            ...rows.map(({ distribution }) => pointsCell(quantileDots(distribution)[index]!)),
          ]),
        }}
      >
        <Measured drawn="forecast" data={report}>
          {(width) => <DotPlot rows={rows} width={width} threshold={null} />}
        </Measured>
      </Figure>
      <SideBySide
        caption={texts.forecastTable}
        first={texts.quantity}
        columns={names}
        rows={[
          { id: 'score', name: texts.score, cells: sides.map((side) => pointsValue(report.score[side])) },
          {
            id: 'auto',
            name: texts.columns.autonomousPoints,
            cells: sides.map((side) => pointsValue(report.autoPoints[side])),
          },
          {
            id: 'finish',
            name: texts.columns.finishPoints,
            cells: sides.map((side) => pointsValue(report.finishPoints[side])),
          },
          {
            id: 'ranking',
            name: bonuses.rankingPoints,
            cells: sides.map((side) => pointsValue(report.rankingPoints[side])),
          },
          ...page.game.bonuses.map(({ id, name }) => ({
            id,
            name: bonuses.chance(name),
            cells: sides.map((side) => chanceValue(report.bonuses[id]![side])),
          })),
        ]}
      />
      <p className="soft">{texts.forecastHow(records, report.replicates)}</p>
    </div>
  )
}

/** The matches that are still to come, each a way to its forecast. */
export function ComingMatches({ page }: { page: EventPage }) {
  const texts = words().estimates
  const counted = new Set(page.results.flatMap(({ match, result }) => (result ? [match] : [])))
  const voided = new Set(page.schedule.matches.flatMap(({ match: { voids } }) => (voids === undefined ? [] : [voids])))
  const coming = page.schedule.matches.filter(({ match: { id } }) => !counted.has(id) && !voided.has(id))
  if (coming.length === 0) return null
  const link = ({ match }: (typeof coming)[number]) => (
    <li key={match.id}>
      <Link href={forecastAddress(page.event.id, match.id)}>{matchName(match)}</Link>
    </li>
  )
  return (
    <div className="stack no-print">
      <h3>{texts.coming}</h3>
      <ul className="coming">{coming.slice(0, 6).map(link)}</ul>
      {coming.length > 6 && (
        <details>
          <summary>{texts.later(coming.length - 6)}</summary>
          <ul className="coming">{coming.slice(6).map(link)}</ul>
        </details>
      )}
    </div>
  )
}
