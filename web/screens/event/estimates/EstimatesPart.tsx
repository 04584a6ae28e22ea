import { useSearch } from 'wouter'
import { useEstimates } from '../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { percent } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { Earlier } from './Earlier.tsx'
import { ComingMatches, ForecastPart } from './ForecastPart.tsx'
import { HalfLives } from './HalfLives.tsx'
import { chosenIn } from './sideBySide/chosen.ts'
import { SideBySidePart } from './sideBySide/SideBySidePart.tsx'
import { TeamPart } from './TeamPart.tsx'
import { TeamTable } from './TeamTable.tsx'
import { useHalfLifeSaid } from './useHalfLifeSaid.ts'
import './estimates.css'

/** What the field says of the robots: all of them beside each other, one in full (`?team=`), some (`?teams=`), or a match (`?match=`). */
export function EstimatesPart(page: EventPage) {
  const texts = words().estimates
  const asked = useSearch()
  const search = new URLSearchParams(asked)
  const [team, match] = [search.get('team'), search.get('match')]
  const estimates = useEstimates(page.event.id)
  const halfLifeSaid = useHalfLifeSaid(page.event.id)
  if (team !== null) return <TeamPart page={page} team={team} all={estimates.data} />
  if (search.has('teams')) return <SideBySidePart page={page} named={chosenIn(asked)} all={estimates.data} />
  if (match !== null) return <ForecastPart key={match} page={page} id={match} />
  if (estimates.error && !estimates.data)
    return <Trouble title={texts.trouble} error={estimates.error} retry={() => void estimates.refetch()} />
  if (!estimates.data) return <Loading what={texts.what} />
  const { data } = estimates
  return (
    <section className="sheet stack" aria-labelledby="estimates">
      <h2 id="estimates">{texts.title}</h2>
      {data.records === 0 && !data.earlier?.matches ? (
        <Empty title={texts.empty}>
          <p>{texts.emptyHow}</p>
        </Empty>
      ) : (
        <>
          <p>{texts.from(data.records, data.matches)}</p>
          <ComingMatches page={page} />
          <TeamTable page={page} teams={data.teams} />
          <p className="soft">
            {texts.howRead} {halfLifeSaid}
          </p>
          <HalfLives page={page} />
        </>
      )}
      {data.earlier && (
        <p>
          {data.earlier.name === null
            ? words().earlier.missing
            : words().earlier.counts(data.earlier.name, percent(data.earlier.discount), data.earlier.teams)}
        </p>
      )}
      <Earlier page={page} />
    </section>
  )
}
