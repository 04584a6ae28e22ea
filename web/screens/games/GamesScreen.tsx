import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { NewGame } from './NewGame.tsx'
import { SchemaLink } from './SchemaLink.tsx'
import '../start/start.css'

export default function GamesScreen() {
  const texts = words().games.list
  return (
    <DocumentList kind="game" href="/games" title={texts.title} noun={texts.noun} intro={texts.intro}>
      <NewGame />
      <p className="soft small">
        {texts.schema} <SchemaLink />
      </p>
    </DocumentList>
  )
}
