import { NativeSelect } from '@mantine/core'
import { useEffect, useMemo, useRef } from 'react'
import { Link, useSearchParams } from 'wouter'
import type { Game } from '../../../../src/model/documents/types.ts'
import { Unreachable } from '../../../data/api.ts'
import { useReachable } from '../../../data/connection.ts'
import { type Stored, useStored } from '../../../data/documents.ts'
import { Cautions } from '../../../shell/Cautions.tsx'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { spotName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { keepOpened, readOpened } from './opened.ts'
import { type Timed, timedKey, timedParts, timingId } from './parts.ts'
import { Timing } from './Timing.tsx'
import { useOffline } from './useOffline.ts'
import './stopwatch.css'

/** Times a part of a design on the practice field, with a phone in the hand. */
export default function StopwatchScreen(props: { id: string }) {
  const stored = useStored('design', props.id)
  const game = useStored('game', stored.data?.body.game ?? null)
  const error = stored.error ?? game.error
  const found = useMemo(
    () => (stored.data && game.data ? { stored: stored.data, game: game.data.body } : null),
    [stored.data, game.data],
  )
  useEffect(() => {
    if (found) keepOpened(found, Date.now())
  }, [found])
  const kept = useMemo(() => (error && !found ? readOpened(props.id) : null), [error, found, props.id])
  useOnline(error instanceof Unreachable, () => {
    void stored.refetch()
    if (stored.data) void game.refetch()
  })
  if (error && !found && !(kept && error instanceof Unreachable))
    return (
      <Trouble
        title={words().designs.screen.trouble}
        error={error}
        retry={() => {
          void stored.refetch()
          void game.refetch()
        }}
      />
    )
  const opened = found ?? kept
  if (!opened) return <Loading what={words().designs.screen.what} />
  return <Page stored={opened.stored} game={opened.game} at={kept?.at ?? null} />
}

/** Asks again as soon as the browser has a connection, or the server has answered anything. */
function useOnline(waiting: boolean, ask: () => void) {
  const latest = useRef(ask)
  const reachable = useReachable()
  useEffect(() => {
    latest.current = ask
  })
  useEffect(() => {
    if (!waiting) return
    if (reachable) latest.current()
    const again = () => latest.current()
    addEventListener('online', again)
    return () => removeEventListener('online', again)
  }, [waiting, reachable])
}

/** From where to where a drive goes. */
function DriveEnds(props: { game: Game; timed: Timed; onChoose(key: string): void }) {
  const { game, timed } = props
  const { part, ends, leg } = timed
  if (part.kind !== 'drive' || !ends) return null
  const texts = words().stopwatch.drive
  const select = (which: 'from' | 'to', others: string[]) => (
    <NativeSelect
      label={texts[which]}
      value={part[which]}
      onChange={(event) => props.onChoose(timedKey(leg, { ...part, [which]: event.currentTarget.value }))}
      data={others
        .filter((id) => id !== part[which === 'from' ? 'to' : 'from'])
        .map((id) => ({ value: id, label: spotName(game, id) }))}
    />
  )
  return (
    <div className="row drive-ends">
      {select('from', ends.from)}
      {select('to', ends.to)}
    </div>
  )
}

/** `at`: since when what is shown is known, where the server does not answer. */
function Page(props: { stored: Stored<'design'>; game: Game; at: number | null }) {
  const { stored, game } = props
  const { robot } = stored.body
  const texts = words().stopwatch
  const offline = useOffline()
  const [search, setSearch] = useSearchParams()
  const asked = search.get('what')
  const parts = useMemo(() => timedParts(game, robot, asked), [game, robot, asked])
  const timed = parts.find(({ key }) => key === asked) ?? parts.find(({ part }) => part.kind !== 'drive') ?? parts[0]
  const legs = [...new Set(parts.map(({ legName }) => legName))]
  return (
    <div className="stack wide stopwatch">
      <div>
        <p className="label">{texts.label(robot.name)}</p>
        <h1>{texts.title}</h1>
        <p>
          <Link href={`/designs/${stored.id}`}>{texts.back}</Link>
        </p>
        {props.at !== null && <p role="status">{texts.offline.asOf(moment(new Date(props.at).toISOString()))}</p>}
      </div>
      {timed === undefined ? (
        <p>{texts.none}</p>
      ) : (
        <>
          {asked !== null && timed.key !== asked && <p role="status">{texts.lost}</p>}
          <NativeSelect
            label={texts.what}
            value={timed.key}
            onChange={(event) => setSearch({ what: event.currentTarget.value }, { replace: true })}
          >
            {legs.map((name) => (
              <optgroup key={name} label={name}>
                {parts
                  .filter(({ legName }) => legName === name)
                  .map((part) => (
                    <option key={part.key} value={part.key}>
                      {part.name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </NativeSelect>
          <DriveEnds game={game} timed={timed} onChoose={(key) => setSearch({ what: key }, { replace: true })} />
          <Timing
            key={timed.key}
            id={timingId(stored.id, timed.leg, timed.part)}
            timed={timed}
            stored={stored}
            game={game}
          />
        </>
      )}
      <p className="soft small" data-testid="offline">
        {texts.offline[offline]}
      </p>
      <aside className="caution stack" aria-label={texts.caution.title}>
        <h2>{texts.caution.title}</h2>
        <p>{texts.caution.text}</p>
      </aside>
      <Cautions which={['lifted', 'spinning', 'energy']} />
    </div>
  )
}
