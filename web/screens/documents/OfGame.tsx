import type { DocumentKind } from '../../../src/model/documents/records.ts'
import { useAllStored, useList } from '../../data/documents.ts'

const ofGames = ['design', 'comparison', 'quickSheet'] as const
type OfGames = (typeof ofGames)[number]
const isOfGames = (kind: DocumentKind): kind is OfGames => (ofGames as readonly DocumentKind[]).includes(kind)

/** The game that a listed document is about, where there are several; before its body has come, nothing. */
export function OfGame(props: { kind: DocumentKind; id: string; revision: number }) {
  const games = useList('game').data ?? []
  const asked = games.length > 1 && isOfGames(props.kind)
  const { data } = useAllStored(
    asked ? (props.kind as OfGames) : 'design',
    asked ? [{ id: props.id, revision: props.revision }] : [],
  )
  const game = data?.[0]?.body.game
  if (game === undefined) return null
  const id = typeof game === 'string' ? game : game.id
  return <> · {games.find((each) => each.id === id)?.name ?? id}</>
}
