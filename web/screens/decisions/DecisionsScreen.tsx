import { Link } from 'wouter'
import { useList } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import '../start/start.css'

export default function DecisionsScreen() {
  const texts = words().decisions
  return (
    <DocumentList
      kind="decision"
      href="/decisions"
      title={texts.title}
      noun={texts.noun}
      intro={texts.intro}
      begin={texts.begin}
    >
      <p>
        {texts.madeFrom} <Link href="/trade-offs">{texts.tradeOff}</Link>.
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
