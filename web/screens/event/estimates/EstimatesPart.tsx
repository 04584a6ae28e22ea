import { useSearch } from 'wouter'
import { useEstimates } from '../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { TeamPart } from './TeamPart.tsx'
import { TeamTable } from './TeamTable.tsx'
import './estimates.css'

/** What the field says of the robots: all of them beside each other, or one in full (`?team=`). */
export function EstimatesPart(page: EventPage) {
  const texts = words().estimates
  const team = new URLSearchParams(useSearch()).get('team')
  const estimates = useEstimates(page.event.id)
  if (team !== null) return <TeamPart page={page} team={team} all={estimates.data} />
  if (estimates.error && !estimates.data)
    return <Trouble title={texts.trouble} error={estimates.error} retry={() => void estimates.refetch()} />
  if (!estimates.data) return <Loading what={texts.what} />
  const { data } = estimates
  return (
    <section className="sheet stack" aria-labelledby="estimates">
      <h2 id="estimates">{texts.title}</h2>
      {data.records === 0 ? (
        <Empty title={texts.empty}>
          <p>{texts.emptyHow}</p>
        </Empty>
      ) : (
        <>
          <p>{texts.from(data.records, data.matches)}</p>
          <TeamTable page={page} teams={data.teams} />
          <p className="soft">{texts.howRead}</p>
        </>
      )}
    </section>
  )
}
