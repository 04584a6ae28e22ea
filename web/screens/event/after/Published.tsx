import { Button } from '@mantine/core'
import { useState } from 'react'
import type { PublishedEvent } from '../../../../src/model/event/after/published.ts'
import { usePublished } from '../../../data/after.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { saveFile } from '../../../tables/save.ts'
import { words } from '../../../words/catalogue.ts'
import { day, listed, plain, points, seconds } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'

/** What can be given to other teams, as a page and as a file: both hold the same. */
export function Published({ page, team, design }: { page: EventPage; team: string; design: string | null }) {
  const texts = words().after.publish
  const published = usePublished({ event: page.event.id, team, design })
  const [handed, setHanded] = useState<string | null>(null)
  if (published.error && !published.data)
    return <Trouble title={texts.trouble} error={published.error} retry={() => void published.refetch()} />
  if (!published.data) return <Loading what={texts.what} />
  const { data } = published
  const hand = () => {
    const name = `${data.event.id.replaceAll(/[^\w.-]+/g, '-')}-published.json`
    saveFile(name, `${JSON.stringify(data, null, 1)}\n`, 'application/json')
    setHanded(name)
  }
  return (
    <>
      <div className="sheet stack no-print">
        <h3>{texts.title}</h3>
        <p>{texts.intro}</p>
        <p className="event-caution">{texts.look}</p>
        <div className="row">
          <Button onClick={hand}>{texts.file}</Button>
          <Button variant="default" onClick={() => window.print()}>
            {words().after.print}
          </Button>
          {handed && <span role="status">{texts.handed(handed)}</span>}
        </div>
      </div>
      <article className="sheet stack">
        <h2 className="only-print">
          {data.event.name}
          {data.event.startsOn && `, ${day(data.event.startsOn)}`}
        </h2>
        <Own own={data.own} />
        <RankingOf data={data} />
        <Counted data={data} />
        <Totals data={data} />
      </article>
    </>
  )
}

function Own({ own }: { own: PublishedEvent['own'] }) {
  const texts = words().after.publish
  if (!own) return null
  const { trips, forecasts } = own
  return (
    <>
      <h3>{texts.own}</h3>
      {trips && <p>{texts.ownTrips(seconds(trips.field), seconds(trips.model), trips.seen)}</p>}
      {forecasts && (
        <p>{texts.ownForecasts(plain(forecasts.wins, 1), forecasts.matches, points(forecasts.expectedWins))}</p>
      )}
      {!trips && !forecasts && <p>{texts.noOwn}</p>}
    </>
  )
}

function RankingOf({ data }: { data: PublishedEvent }) {
  const texts = words().after.publish
  if (data.ranking.length === 0) return null
  return (
    <>
      <h3>{texts.ranking}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.ranking}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.rank}</th>
              <th scope="col">{words().after.team}</th>
              <th scope="col" className="figure">
                {texts.played}
              </th>
              <th scope="col" className="figure">
                {texts.record}
              </th>
            </tr>
          </thead>
          <tbody>
            {data.ranking.map(({ rank, team, played, won, tied, lost }) => (
              <tr key={team}>
                <td>{rank}</td>
                <th scope="row">{team}</th>
                <td className="figure">{played}</td>
                <td className="figure">
                  {won} – {tied} – {lost}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}

/** By team: means over the matches in which it was watched, as the file has them match by match. */
function Counted({ data }: { data: PublishedEvent }) {
  const texts = words().after.publish
  if (data.counted.length === 0) return null
  const rows = data.event.teams.flatMap((team) => {
    const own = data.counted.filter((each) => each.team === team)
    return own.length > 0 ? [{ team, own }] : []
  })
  const mean = (own: PublishedEvent['counted'], goal: string, period: 'autonomous' | 'teleop') =>
    own.reduce((sum, { goals }) => sum + (goals.find((each) => each.goal === goal)?.[period] ?? 0), 0) / own.length
  return (
    <>
      <h3>{texts.countedTitle}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.countedTitle}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{words().after.team}</th>
              <th scope="col" className="figure">
                {texts.countedMatches}
              </th>
              {data.game.goals.map(({ id, name }) => (
                <th key={id} scope="col" className="figure">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ team, own }) => (
              <tr key={team}>
                <th scope="row">{team}</th>
                <td className="figure">{own.length}</td>
                {data.game.goals.map(({ id }) => (
                  <td key={id} className="figure">
                    {points(mean(own, id, 'autonomous'))} + {points(mean(own, id, 'teleop'))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.countedHow}</p>
    </>
  )
}

function Totals({ data }: { data: PublishedEvent }) {
  const texts = words().after.publish
  const results = new Map(data.results.map((result) => [result.match, result]))
  return (
    <>
      <h3>{texts.matches}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.matches}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{words().after.match}</th>
              <th scope="col">{texts.red}</th>
              <th scope="col">{texts.blue}</th>
              <th scope="col" className="figure">
                {texts.total}
              </th>
            </tr>
          </thead>
          <tbody>
            {data.matches.map((match) => {
              const result = results.get(match.id)
              return (
                <tr key={match.id}>
                  <th scope="row">{matchName(match)}</th>
                  <td>{listed(match.red)}</td>
                  <td>{listed(match.blue)}</td>
                  <td className="figure">
                    {result ? words().after.result(plain(result.red, 1), plain(result.blue, 1)) : texts.open}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
    </>
  )
}
