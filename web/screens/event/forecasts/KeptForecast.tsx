import { Link } from 'wouter'
import { type ForecastRow, useForecastRecord } from '../../../data/forecasts.ts'
import { words } from '../../../words/catalogue.ts'
import { moment, plain, points } from '../../../words/format.ts'
import { allianceName } from '../names.ts'
import { callOf, cameOf } from './said.ts'

const alliances = ['red', 'blue'] as const

/** That a forecast is kept and since when, what was said of the match earlier, and afterwards what happened. */
export function KeptForecast(of: { event: string; match: string; kept: { madeAt: string } | null }) {
  const { event, match, kept } = of
  const texts = words().forecasts
  const record = useForecastRecord(event)
  const row = record.data?.matches.find((each) => each.match === match)
  const link = (
    <p className="small no-print">
      <Link href={`/event/${event}/forecasts`}>{texts.record}</Link>
    </p>
  )
  if (kept)
    return (
      <>
        <p>{texts.keptAt(moment(kept.madeAt))}</p>
        {row && <Earlier row={row} but={kept.madeAt} />}
        {link}
      </>
    )
  if (!row)
    return (
      <>
        <p>{texts.notKept}</p>
        {link}
      </>
    )
  return (
    <>
      <p>
        {texts.before(moment(row.madeAt), callOf(row))} {cameOf(row)}
      </p>
      {row.result && row.state === 'scored' && (
        <ul>
          {alliances.map((alliance) => {
            const { mean, interval80 } = row.scores[alliance]
            const [low, high] = interval80
            return (
              <li key={alliance}>
                {texts.scoreOf(
                  allianceName(alliance),
                  plain(row.result![alliance], 1),
                  plain(low),
                  plain(high),
                  points(mean),
                )}
              </li>
            )
          })}
        </ul>
      )}
      <Earlier row={row} but={row.madeAt} />
      {link}
      <p className="soft">{texts.nowKnown}</p>
    </>
  )
}

function Earlier({ row, but }: { row: ForecastRow; but: string }) {
  const texts = words().forecasts
  const earlier = row.all.filter(({ madeAt }) => madeAt < but)
  if (earlier.length === 0) return null
  return (
    <details>
      <summary>{texts.earlier(earlier.length)}</summary>
      <ul>
        {earlier.map((each) => (
          <li key={each.id}>{texts.earlierOf(moment(each.madeAt), callOf(each))}</li>
        ))}
      </ul>
    </details>
  )
}
