import { useQueries } from '@tanstack/react-query'
import { Link } from 'wouter'
import { teamKnown } from '../../../../data/estimates.ts'
import { Loading, Trouble } from '../../../../shell/states.tsx'
import { words } from '../../../../words/catalogue.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { matchName } from '../../names.ts'
import { Legend } from '../Legend.tsx'
import { teamAddress } from '../TeamTable.tsx'
import { TimelineStrip } from '../TimelineStrip.tsx'

const latest = 3

/** The teams' last matches, one above the other on one scale of time. */
export function Strips({ page, teams }: { page: EventPage; teams: readonly string[] }) {
  const { estimates, sideBySide: texts } = words()
  const { game } = page
  const known = useQueries({ queries: teams.map((team) => teamKnown(page.event.id, team)) })
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  return (
    <>
      <Legend game={game} />
      {teams.map((team, index) => {
        const { data, error, refetch } = known[index]!
        if (error && !data)
          return <Trouble key={team} title={estimates.troubleOf(team)} error={error} retry={() => void refetch()} />
        if (!data) return <Loading key={team} what={estimates.whatOf(team)} />
        const watched = data.watched.filter(({ timeline }) => timeline.length > 0)
        return (
          <div key={team}>
            <p>
              <strong>
                <Link href={teamAddress(page.event.id, team)}>{team}</Link>
              </strong>{' '}
              <span className="soft small">{watched.length === 0 ? texts.notWatched : texts.latest}</span>
            </p>
            <ol className="strips close">
              {watched.slice(-latest).map(({ match, timeline }) => (
                <li key={match}>
                  <span className="soft small">{names.get(match) ?? match}</span>
                  <TimelineStrip
                    game={game}
                    timeline={timeline}
                    label={estimates.stripOf(`${team}, ${names.get(match) ?? match}`, texts.latest)}
                  />
                </li>
              ))}
            </ol>
          </div>
        )
      })}
    </>
  )
}
