import { useState } from 'react'
import { Link } from 'wouter'
import { type Estimates, useTeamKnown, type WatchedMatch } from '../../../data/estimates.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, plain } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { usePeopleNames } from '../usePeopleNames.ts'
import { Legend } from './Legend.tsx'
import { LookAt } from './made/LookAt.tsx'
import { Numbers } from './Numbers.tsx'
import { Sources } from './Sources.tsx'
import { TimelineStrip } from './TimelineStrip.tsx'
import { Trend } from './Trend.tsx'

/** One team: its matches first, then what follows from them beside what it says of itself. */
export function TeamPart({ page, team, all }: { page: EventPage; team: string; all: Estimates | undefined }) {
  const texts = words().estimates
  const known = useTeamKnown(page.event.id, team)
  const name = page.event.body.teams.find((each) => each.team === team)?.name
  const back = <Link href={`/event/${page.event.id}/estimates`}>{texts.allTeams}</Link>
  if (known.error && !known.data)
    return (
      <>
        {back}
        <Trouble title={texts.troubleOf(team)} error={known.error} retry={() => void known.refetch()} />
      </>
    )
  if (!known.data) return <Loading what={texts.whatOf(team)} />
  const { data } = known
  return (
    <section className="stack" aria-labelledby="team">
      <p className="small no-print">{back}</p>
      <div className="sheet stack">
        <h2 id="team">{texts.teamTitle(team, name ?? '')}</h2>
        <Matches page={page} team={team} watched={data.watched} />
      </div>
      <Trend page={page} team={team} />
      <Sources page={page} known={data} />
      <Numbers page={page} of={data.estimate} all={all?.teams ?? [data.estimate]} />
    </section>
  )
}

function Matches({ page, team, watched }: { page: EventPage; team: string; watched: readonly WatchedMatch[] }) {
  const { estimates: texts, made } = words()
  const [looked, setLooked] = useState<string | null>(null)
  const { game, schedule } = page
  const matches = new Map(schedule.matches.map(({ match }) => [match.id, match]))
  const personName = usePeopleNames(page)
  const goalName = (id: string) => game.goals.find((goal) => goal.id === id)?.name ?? id
  if (watched.length === 0)
    return (
      <Empty title={texts.notWatched}>
        <p>{texts.notWatchedHow}</p>
      </Empty>
    )
  const named = (id: string) => {
    const match = matches.get(id)
    return match ? matchName(match) : id
  }
  const finishName = (id: string) => game.finishes.find((finish) => finish.id === id)?.name ?? id
  return (
    <>
      <Legend game={game} />
      <ol className="strips">
        {watched.map((each) => {
          const scored = Object.entries(each.scored).map(([goal, n]) => texts.piecesAt(plain(n, 1), goalName(goal)))
          const told = [
            ...(each.absent ? [texts.absent] : scored.length > 0 ? scored : [texts.nothingScored]),
            ...(each.missed > 0 ? [texts.missed(plain(each.missed, 1))] : []),
            ...(each.finish ? [finishName(each.finish)] : []),
          ]
          const scouts = each.records.map(({ scout, counts }) => {
            const who = personName(scout)
            return counts ? who : texts.setAside(who)
          })
          return (
            <li key={each.match}>
              <p>
                <strong>{named(each.match)}</strong> <span className="soft">{texts.by(listed(scouts))}</span>
              </p>
              {each.timeline.length > 0 && (
                <TimelineStrip
                  game={game}
                  timeline={each.timeline}
                  label={texts.stripOf(named(each.match), told.join(', '))}
                />
              )}
              <p className="small">
                {told.join(', ')}
                {page.lead && (
                  <>
                    {' '}
                    <button
                      type="button"
                      className="opens no-print"
                      aria-label={made.lookOf(named(each.match), made.look(each.records.length))}
                      onClick={() => setLooked(each.match)}
                    >
                      {made.look(each.records.length)}
                    </button>
                  </>
                )}
              </p>
            </li>
          )
        })}
      </ol>
      {looked !== null && (
        <LookAt page={page} looked={{ match: looked, team, ids: null }} onClose={() => setLooked(null)} />
      )}
    </>
  )
}
