import { DocumentList } from '../documents/DocumentList.tsx'
import '../start/start.css'

export default function GamesScreen() {
  return (
    <DocumentList
      kind="game"
      href="/games"
      title="Games"
      noun="game"
      intro="A game is a season’s rules and its field, to scale. To enter your own: copy one and change it, or bring one in from a file."
    />
  )
}
