import { useStored } from '../../data/documents.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { useRevisionAsked } from '../documents/useEditing.ts'
import { DesignEditor } from './DesignEditor.tsx'
import { useWaysToPlay } from './useWaysToPlay.ts'

/** A robot: where its time goes, what each second is worth, and every number of it to be changed. */
export default function DesignScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('design', props.id, revision)
  const game = useStored('game', stored.data?.body.game ?? null)
  const ways = useWaysToPlay(props.id)
  const error = stored.error ?? game.error ?? ways.error
  if (error && !(stored.data && game.data))
    return (
      <Trouble
        title={words().designs.screen.trouble}
        error={error}
        retry={() => {
          void stored.refetch()
          void game.refetch()
          ways.refetch()
        }}
      />
    )
  if (!stored.data || !game.data || !ways.data) return <Loading what={words().designs.screen.what} />
  return (
    <DesignEditor
      key={`${props.id}/${revision ?? 'newest'}`}
      stored={stored.data}
      game={game.data.body}
      ways={ways.data}
      old={revision !== undefined}
    />
  )
}
