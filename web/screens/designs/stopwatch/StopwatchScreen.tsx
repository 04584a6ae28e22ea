import { NativeSelect } from '@mantine/core'
import { useMemo } from 'react'
import { Link, useSearchParams } from 'wouter'
import type { Game } from '../../../../src/model/documents/types.ts'
import { type Stored, useStored } from '../../../data/documents.ts'
import { Cautions } from '../../../shell/Cautions.tsx'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { timedParts, timingId } from './parts.ts'
import { Timing } from './Timing.tsx'
import './stopwatch.css'

/** Times a part of a design on the practice field, with a phone in the hand. */
export default function StopwatchScreen(props: { id: string }) {
  const stored = useStored('design', props.id)
  const game = useStored('game', stored.data?.body.game ?? null)
  const error = stored.error ?? game.error
  if (error && !(stored.data && game.data))
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
  if (!stored.data || !game.data) return <Loading what={words().designs.screen.what} />
  return <Opened stored={stored.data} game={game.data.body} />
}

function Opened(props: { stored: Stored<'design'>; game: Game }) {
  const { stored, game } = props
  const { robot } = stored.body
  const texts = words().stopwatch
  const [search, setSearch] = useSearchParams()
  const asked = search.get('what')
  const parts = useMemo(() => timedParts(game, robot), [game, robot])
  const timed = parts.find(({ key }) => key === asked) ?? parts[0]
  const legs = [...new Set(parts.map(({ legName }) => legName))]
  return (
    <div className="stack wide stopwatch">
      <div>
        <p className="label">{texts.label(robot.name)}</p>
        <h1>{texts.title}</h1>
        <p>
          <Link href={`/designs/${stored.id}`}>{texts.back}</Link>
        </p>
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
          <Timing
            key={timed.key}
            id={timingId(stored.id, timed.leg, timed.part)}
            timed={timed}
            stored={stored}
            game={game}
          />
        </>
      )}
      <aside className="caution stack" aria-label={texts.caution.title}>
        <h2>{texts.caution.title}</h2>
        <p>{texts.caution.text}</p>
      </aside>
      <Cautions which={['lifted', 'spinning', 'energy']} />
    </div>
  )
}
