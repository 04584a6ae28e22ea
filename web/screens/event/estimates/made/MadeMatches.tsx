import { useState } from 'react'
import type { MadeMatch, MadeOfTeam } from '../../../../../src/model/scouting/estimates/made.ts'
import { words } from '../../../../words/catalogue.ts'
import { percent, plain } from '../../../../words/format.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { matchName } from '../../names.ts'
import { LookAt } from './LookAt.tsx'
import { matchesOf } from './parts.ts'
import { chances, type Quantity, written } from './quantity.ts'

/** Own matches behind a number, each with a way to its records. */
export function MadeMatches(props: { page: EventPage; team: string; made: MadeOfTeam; what: Quantity }) {
  const { page, team, made, what } = props
  const texts = words().made
  const [looked, setLooked] = useState<MadeMatch | null>(null)
  const matches = matchesOf(page.game, made, what)
  if (matches.length === 0) return <p>{texts.noMatches}</p>
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  const before = matches.filter(({ earlier }) => earlier)
  const named = (each: MadeMatch) =>
    each.earlier ? words().earlier.ofEarlier(before.indexOf(each) + 1) : (names.get(each.match) ?? each.match)
  const weighted = matches.some(({ weight }) => weight < 0.999)
  const measured = matches.some(({ seen }) => seen !== 1)
  return (
    <>
      <table className="tide">
        <caption>{texts.matches}</caption>
        <thead>
          <tr>
            <th scope="col">{texts.match}</th>
            <th scope="col" className="figure">
              {texts.value}
            </th>
            {measured && (
              <th scope="col" className="figure">
                {texts.seen[seenIn(what)]}
              </th>
            )}
            {weighted && (
              <th scope="col" className="figure">
                {texts.weight}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {matches.map((each) => (
            <tr key={`${each.match} ${each.earlier ?? false}`}>
              <th scope="row">
                {named(each)}
                <div className="soft small">
                  <Records
                    name={named(each)}
                    of={each}
                    lead={page.lead && !each.earlier}
                    look={() => setLooked(each)}
                  />
                </div>
              </th>
              <td className="figure">{saidOf(what, each)}</td>
              {measured && <td className="figure">{plain(each.seen, 2)}</td>}
              {weighted && <td className="figure">{percent(each.weight)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {looked && (
        <LookAt
          page={page}
          looked={{ match: looked.match, team, ids: looked.records }}
          onClose={() => setLooked(null)}
        />
      )}
    </>
  )
}

/** Whoever leads looks at the records themselves; others see how many there are. */
function Records({ name, of, lead, look }: { name: string; of: MadeMatch; lead: boolean; look(): void }) {
  const texts = words().made
  if (of.records.length === 0) return texts.fromSchedule
  if (!lead) return texts.recordCount(of.records.length)
  const label = texts.look(of.records.length)
  return (
    <button type="button" className="opens" aria-label={texts.lookOf(name, label)} onClick={look}>
      {label}
    </button>
  )
}

function saidOf(what: Quantity, { value }: MadeMatch): string {
  const texts = words().made
  // Of one match a chance is no share but whether it happened.
  if (chances.includes(what.kind) && what.kind !== 'success' && (value === 0 || value === 1))
    return value === 1 ? texts.yes : texts.no
  return written(what)(value)
}

/** What is counted in the column of how much was seen. */
const seenIn = ({ kind }: Quantity) => (kind === 'success' ? 'tries' : kind === 'trip' ? 'trips' : 'matches')
