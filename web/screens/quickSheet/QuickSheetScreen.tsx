import { useState } from 'react'
import { useSearchParams } from 'wouter'
import { same } from '../../data/difference.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { useDraft } from '../../data/draft.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { QuickSheetEditor } from './QuickSheetEditor.tsx'

/** The first Saturday: one table of ways to play, ranked while it is typed. */
export default function QuickSheetScreen(props: { id: string }) {
  const [search] = useSearchParams()
  const asked = Number(search.get('revision'))
  const revision = Number.isInteger(asked) && asked > 0 ? asked : undefined
  const stored = useStored('quickSheet', props.id, revision)
  const texts = words().quickSheet
  if (stored.isPending) return <Loading what={texts.loading} />
  if (stored.error) return <Trouble title={texts.notLoaded} error={stored.error} retry={() => void stored.refetch()} />
  return <Opened key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function Opened(props: { stored: Stored<'quickSheet'>; old: boolean }) {
  const { stored, old } = props
  const draft = useDraft({
    kind: 'quickSheet',
    id: old ? `${stored.id}@${stored.revision}` : stored.id,
    revision: stored.revision,
    body: stored.body,
  })
  const { game: named } = draft.value
  const game = useStored('game', named.id, named.revision)
  const newest = useStored('game', named.id)
  // While another revision of the game is fetched, the one before stays.
  const [known, setKnown] = useState<Stored<'game'> | null>(null)
  if (game.data && game.data !== known) setKnown(game.data)
  const texts = words().quickSheet
  if (game.error && !known)
    return <Trouble title={texts.notLoaded} error={game.error} retry={() => void game.refetch()} />
  const shown = game.data ?? known
  if (!shown) return <Loading what={texts.loading} />
  return <QuickSheetEditor {...{ stored, old, draft }} game={shown} newest={newer(newest.data, shown)} />
}

/** The newest revision where its rules are others; a restored one says the same under a new number. */
const newer = (newest: Stored<'game'> | undefined, shown: Stored<'game'>): number | null =>
  newest && newest.revision > shown.revision && !same(newest.body, shown.body) ? newest.revision : null
