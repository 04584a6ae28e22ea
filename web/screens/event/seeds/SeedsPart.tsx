import { Button, NativeSelect } from '@mantine/core'
import { Link } from 'wouter'
import { useSeeds } from '../../../data/seeds.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { useOurTeam } from '../useOurTeam.ts'
import { Found } from './Found.tsx'
import './seeds.css'

/** Where all teams end, ours first, and what each of our matches is worth. */
export function SeedsPart(page: EventPage) {
  const texts = words().seeds
  const { id, body } = page.event
  const { team, choose } = useOurTeam(page)
  const { state, found, start, stop } = useSeeds(id, team)
  if (page.schedule.matches.length === 0)
    return (
      <Empty title={texts.noSchedule}>
        <p>
          {texts.noScheduleHow} <Link href={`/event/${id}/schedule`}>{texts.toSchedule}</Link>
        </p>
      </Empty>
    )
  if (team === null) return <Loading what={texts.what} />
  return (
    <section className="stack" aria-labelledby="seeds">
      <div className="sheet stack">
        <h2 id="seeds">{texts.title}</h2>
        <div className="row no-print seeds-choice">
          <NativeSelect
            label={texts.team}
            value={team}
            data={body.teams.map((each) => each.team)}
            onChange={({ currentTarget: { value } }) => choose(value)}
          />
          {state.at === 'work' && (
            <Button variant="default" onClick={stop}>
              {texts.stop}
            </Button>
          )}
          {state.at === 'stopped' && <Button onClick={start}>{texts.goOn}</Button>}
          {state.at === 'done' && (
            <Button variant="default" onClick={start}>
              {texts.anew}
            </Button>
          )}
        </div>
        {state.at === 'work' && (
          <>
            <progress max={state.total ?? 1} value={state.total ? state.done : undefined} aria-label={texts.progress} />
            <p role="status">
              {state.total === null
                ? texts.begin
                : state.done < state.total
                  ? texts.working(state.done, state.total)
                  : texts.last}
            </p>
          </>
        )}
        {state.at === 'stopped' && <p role="status">{texts.stopped(state.done, state.total)}</p>}
        {found && <Found page={page} team={team} seeds={found.seeds} at={found.at} />}
      </div>
      {state.at === 'trouble' && <Trouble title={texts.trouble} error={state.error} retry={start} />}
    </section>
  )
}
