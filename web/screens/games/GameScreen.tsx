import { useMemo } from 'react'
import { Link } from 'wouter'
import { checkGame } from '../../../src/model/documents/index.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { problemWords } from '../../words/problems.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing, useRevisionAsked } from '../documents/useEditing.ts'
import { GameForms } from './GameForms.tsx'
import { GameText } from './GameText.tsx'
import { SaveReading } from './SaveReading.tsx'
import '../designs/designs.css'

/** The season's rules and the field, to scale. */
export default function GameScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('game', props.id, revision)
  if (stored.isPending) return <Loading what={words().games.screen.what} />
  if (stored.error)
    return <Trouble title={words().games.screen.trouble} error={stored.error} retry={() => void stored.refetch()} />
  return <GameEditor key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function GameEditor(props: { stored: Stored<'game'>; old: boolean }) {
  const { stored, old } = props
  const editing = useEditing({ kind: 'game', stored, old })
  const { draft } = editing
  const game = draft.value
  const problems = useMemo(() => checkGame(game), [game])
  return (
    <EditProvider value={editing.fields(problems)}>
      <div className="stack wide">
        <div className="row spread">
          <div>
            <p className="label">{words().games.screen.label}</p>
            <h1>{game.name || words().games.screen.noName}</h1>
          </div>
          <SaveBar of={editing} href="/games" />
        </div>
        {problems.length > 0 && (
          <div role="alert" className="loss">
            <p>{words().games.screen.problems}</p>
            <ul>
              {problems.slice(0, 10).map((problem) => (
                <li key={`${problem.path.join('/')} ${problem.message}`}>{problemWords(problem)}</li>
              ))}
            </ul>
          </div>
        )}
        <GameForms
          game={game}
          id={stored.id}
          source={words().games.screen.source(game.name, draft.base, draft.dirty)}
        />
        <GameText game={game} readOnly={old} onApply={draft.replace} />
        <div className="row">
          <ExportFile name={game.name} body={game} />
        </div>
        {!old && (
          <SaveReading game={stored.id} draft={draft} ready={problems.length === 0 && editing.unread.length === 0} />
        )}
        <Next game={stored.id} />
      </div>
    </EditProvider>
  )
}

/** Where a game leads. */
function Next(props: { game: string }) {
  const texts = words().games.next
  return (
    <nav className="row ways" aria-label={texts.title}>
      <span>{texts.title}:</span>
      <Link href={`/quick-sheet?game=${props.game}`}>{texts.sheet}</Link>
      <Link href={`/designs?game=${props.game}`}>{texts.design}</Link>
      <Link href={`/trade-offs?game=${props.game}`}>{texts.tradeOff}</Link>
      <Link href={`/games/${props.game}/consequences`}>{words().rulesChange.link}</Link>
    </nav>
  )
}
