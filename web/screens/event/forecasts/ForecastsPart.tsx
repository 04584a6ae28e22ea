import { Link } from 'wouter'
import { type ForecastRow, useForecastRecord } from '../../../data/forecasts.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'
import type { EventPage } from '../EventFrame.tsx'
import { forecastAddress } from '../estimates/ForecastPart.tsx'
import { matchName } from '../names.ts'
import { Judged } from './Judged.tsx'
import { Making } from './Making.tsx'
import { callOf, cameOf, isHit, trustOf } from './said.ts'
import './forecasts.css'

/** What became of forecasts that were kept before their matches, and how far they can be trusted. */
export function ForecastsPart(page: EventPage) {
  const texts = words().forecasts
  const { id } = page.event
  const record = useForecastRecord(id)
  if (record.error && !record.data)
    return <Trouble title={texts.trouble} error={record.error} retry={() => void record.refetch()} />
  if (!record.data) return <Loading what={texts.what} />
  const { judgement, matches, played } = record.data
  const [first, ...others] = judgement ? trustOf(judgement.calls) : []
  const making = page.lead && <Making event={id} />
  if (matches.length === 0)
    return (
      <Empty title={texts.none}>
        <p>{texts.noneHow}</p>
        <p>
          <Link href={`/event/${id}/estimates`}>{texts.toForecasts}</Link>
        </p>
        {making}
      </Empty>
    )
  return (
    <section className="sheet stack" aria-labelledby="forecasts">
      <h2 id="forecasts">{judgement ? texts.title : texts.unscored}</h2>
      {judgement ? (
        <>
          <p className="answer">{first!.count}</p>
          <p>{first!.verdict}</p>
          {others.map(({ count, verdict }) => (
            <p key={count}>
              {count} {verdict}
            </p>
          ))}
          <p className="soft">{texts.selection(judgement.matches, played)}</p>
          {making}
          <Judged judgement={judgement} />
        </>
      ) : (
        <>
          <p>{texts.unscoredHow(matches.length)}</p>
          {making}
        </>
      )}
      <h3>{texts.all}</h3>
      <SideBySide
        caption={texts.all}
        first={texts.match}
        columns={[texts.call, texts.result, texts.kept]}
        least={150}
        rows={matches.map((row) => ({ id: row.match, name: nameOf(page, row), cells: cellsOf(row) }))}
      />
    </section>
  )
}

function nameOf({ event, schedule }: EventPage, { match: id }: ForecastRow) {
  const found = schedule.matches.find(({ match }) => match.id === id)
  return found ? <Link href={forecastAddress(event.id, id)}>{matchName(found.match)}</Link> : id
}

function cellsOf(row: ForecastRow): string[] {
  const texts = words().forecasts
  const call = callOf(row)
  const told = row.state === 'scored' ? `${call} (${isHit(row) ? texts.hit : texts.miss})` : call
  return [told, cameOf(row), moment(row.madeAt)]
}
