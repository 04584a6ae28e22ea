import { Link } from 'wouter'
import { useList } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import '../start/start.css'

export default function DecisionsScreen() {
  return (
    <DocumentList
      kind="decision"
      href="/decisions"
      title="Decisions"
      noun="decision record"
      intro="What was decided and why, with the inputs as they were, what would change it and how it will be checked."
    >
      <p>
        A decision record is made from a <Link href="/trade-offs">trade-off</Link>.
      </p>
      <RulesLinks />
    </DocumentList>
  )
}

/** From the decisions to what other rules would do to them, game by game. */
function RulesLinks() {
  const games = useList('game')
  return (
    <ul>
      {games.data?.map(({ id, name }) => (
        <li key={id}>
          <Link href={`/games/${id}/consequences`}>{words().rulesChange.linkOf(name)}</Link>
        </li>
      ))}
    </ul>
  )
}
