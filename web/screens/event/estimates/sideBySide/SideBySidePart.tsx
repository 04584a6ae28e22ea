import { useQuery } from '@tanstack/react-query'
import { Link, useLocation } from 'wouter'
import type { SideBySide } from '../../../../../src/model/scouting/estimates/sideBySide.ts'
import { client, said } from '../../../../data/api.ts'
import type { Estimates } from '../../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../../shell/states.tsx'
import { words } from '../../../../words/catalogue.ts'
import { listed } from '../../../../words/format.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { teamAddress } from '../TeamTable.tsx'
import { most, sideBySideAddress } from './chosen.ts'
import { Quantities } from './Quantities.tsx'
import { Strips } from './Strips.tsx'

/** Two to six teams beside each other; which, stands in the address. */
export function SideBySidePart(props: { page: EventPage; named: readonly string[]; all: Estimates | undefined }) {
  const { page, named, all } = props
  const texts = words().sideBySide
  const event = page.event.id
  const known = new Set(page.event.body.teams.map(({ team }) => team))
  const teams = named.filter((team) => known.has(team))
  const found = useQuery({
    queryKey: ['event', event, 'estimates', 'sideBySide', teams.join()],
    queryFn: () =>
      said(client.estimates.sideBySide.query({ event, teams: teams.join(',') })) as unknown as Promise<SideBySide>,
    enabled: teams.length > 1,
    // While another team is added, the others stay.
    placeholderData: (before) => before,
  })
  const shown = found.data
  return (
    <section className="stack" aria-labelledby="side-by-side">
      <p className="small no-print">
        <Link href={`/event/${event}/estimates`}>{words().estimates.allTeams}</Link>
      </p>
      <div className="sheet stack">
        <h2 id="side-by-side">{texts.title}</h2>
        <Chosen page={page} teams={teams} />
        {teams.length < named.length && <p>{texts.notHere(listed(named.filter((team) => !known.has(team))))}</p>}
        {teams.length < 2 ? (
          <Empty title={texts.tooFew}>
            <p>{texts.tooFewHow}</p>
          </Empty>
        ) : found.error && !shown ? (
          <Trouble title={texts.trouble} error={found.error} retry={() => void found.refetch()} />
        ) : shown && all ? (
          <Quantities page={page} shown={shown} all={all.teams} />
        ) : (
          <Loading what={texts.what} />
        )}
      </div>
      {teams.length > 1 && (
        <div className="sheet stack">
          <h3>{texts.strips}</h3>
          <Strips page={page} teams={teams} />
        </div>
      )}
    </section>
  )
}

/** Who is set side by side, with ways to take one out and to add one. */
function Chosen({ page, teams }: { page: EventPage; teams: readonly string[] }) {
  const texts = words().sideBySide
  const [, go] = useLocation()
  const { id } = page.event
  const names = new Map(page.event.body.teams.map(({ team, name }) => [team, name]))
  const to = (next: readonly string[]) => go(sideBySideAddress(id, next), { replace: true })
  return (
    <div className="stack">
      <ul className="chosen-teams">
        {teams.map((team) => (
          <li key={team}>
            <Link href={teamAddress(id, team)}>{team}</Link> {names.get(team)}
            <button
              type="button"
              className="plain-button no-print"
              aria-label={texts.remove(team)}
              onClick={() => to(teams.filter((other) => other !== team))}
            >
              ✕
            </button>
          </li>
        ))}
      </ul>
      {teams.length < most ? (
        <p className="no-print">
          <label>
            {texts.add}{' '}
            <select value="" onChange={({ target }) => to([...teams, target.value])}>
              <option value="" disabled />
              {[...names].map(([team, name]) =>
                teams.includes(team) ? null : (
                  <option key={team} value={team}>
                    {team} {name}
                  </option>
                ),
              )}
            </select>
          </label>
        </p>
      ) : (
        <p className="soft small no-print">{texts.full}</p>
      )}
    </div>
  )
}
