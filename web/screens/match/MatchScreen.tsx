import { useRef } from 'react'
import { Link } from 'wouter'
import { useAllStored, useList, useStored } from '../../data/documents.ts'
import { useGameChoice } from '../../data/useGameChoice.ts'
import { Empty, Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { MatchDesk } from './MatchDesk.tsx'
import './match.css'

/** Three against three: of the game that the address names, or of the one that was saved last. */
export default function MatchScreen(props: { game?: string | undefined }) {
  const { games, game: chosen, error, refetch } = useGameChoice()
  const text = words().match
  if (!games && error) return <Trouble title={text.notLoaded} error={error} retry={() => void refetch()} />
  if (!games) return <Loading what={text.loading} />
  const id = props.game ?? chosen?.id
  if (id === undefined)
    return (
      <Empty title={text.noGame}>
        <p>{text.noGameHelp}</p>
        <p>
          <Link href="/games">{text.toGames}</Link>
        </p>
      </Empty>
    )
  return <MatchOf key={id} game={id} games={games} />
}

/** What was known stays while a new revision is fetched, so that the screen stays as it is. */
function useKept<T>(value: readonly T[] | null): readonly T[] | null {
  const kept = useRef(value)
  if (value !== null && !same(kept.current, value)) kept.current = value
  return kept.current
}

const same = <T,>(before: readonly T[] | null, after: readonly T[]): boolean =>
  before?.length === after.length && after.every((one, index) => one === before[index])

function MatchOf(props: { game: string; games: readonly { id: string; name: string }[] }) {
  const text = words().match
  const game = useStored('game', props.game)
  const list = useList('option')
  const all = useAllStored('option', list.data ?? [])
  const ways = useKept(list.data && all.data ? all.data.filter(({ body }) => body.game === props.game) : null)
  const named = [...new Set((ways ?? []).map(({ body }) => body.design))]
  const found = useAllStored(
    'design',
    named.map((id) => ({ id })),
  )
  const designs = useKept(ways && found.data ? found.data : null)
  const error = game.error ?? list.error ?? all.error ?? found.error
  if (error && !(game.data && ways && designs))
    return (
      <Trouble
        title={text.notLoaded}
        error={error}
        retry={() => {
          void game.refetch()
          void list.refetch()
          all.refetch()
          found.refetch()
        }}
      />
    )
  if (!game.data || !ways || !designs) return <Loading what={text.loading} />
  if (ways.length === 0)
    return (
      <div className="stack wide">
        <h1>{text.title}</h1>
        <Empty title={text.noWays}>
          <p>{text.noWaysHelp(game.data.name)}</p>
          <p>
            <Link href="/designs">{text.toDesigns}</Link>
          </p>
        </Empty>
      </div>
    )
  return <MatchDesk game={game.data} games={props.games} ways={ways} designs={designs} />
}
