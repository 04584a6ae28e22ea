import { useMemo } from 'react'
import { useSearchParams } from 'wouter'
import { checkGame } from '../../../src/model/documents/index.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { useDraft } from '../../data/draft.ts'
import { type Edit, EditProvider } from '../../shell/fields/EditContext.tsx'
import { useTexts } from '../../shell/fields/useTexts.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { useUndoKeys } from '../../shell/useUndoKeys.ts'
import { words } from '../../words/catalogue.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { GameForms } from './GameForms.tsx'
import { GameText } from './GameText.tsx'
import '../designs/designs.css'

/** The season's rules and the field, to scale. */
export default function GameScreen(props: { id: string }) {
  const [search] = useSearchParams()
  const asked = Number(search.get('revision'))
  const revision = Number.isInteger(asked) && asked > 0 ? asked : undefined
  const stored = useStored('game', props.id, revision)
  if (stored.isPending) return <Loading what={words().games.screen.what} />
  if (stored.error)
    return <Trouble title={words().games.screen.trouble} error={stored.error} retry={() => void stored.refetch()} />
  return <GameEditor key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function GameEditor(props: { stored: Stored<'game'>; old: boolean }) {
  const { stored, old } = props
  const draft = useDraft<Game>({
    kind: 'game',
    id: old ? `${stored.id}@${stored.revision}` : stored.id,
    revision: stored.revision,
    body: stored.body,
  })
  const { texts, setText, clear, unread } = useTexts()
  const game = draft.value
  const problems = useMemo(() => checkGame(game), [game])
  const undo = () => {
    clear()
    draft.undo()
  }
  const redo = () => {
    clear()
    draft.redo()
  }
  useUndoKeys(undo, redo)
  const edit: Edit = { document: game, set: draft.set, pause: draft.pause, problems, texts, setText, readOnly: old }
  return (
    <EditProvider value={edit}>
      <div className="stack wide">
        <div className="row spread">
          <div>
            <p className="label">{words().games.screen.label}</p>
            <h1>{game.name || words().games.screen.noName}</h1>
          </div>
          <SaveBar
            kind="game"
            stored={stored}
            draft={draft}
            old={old}
            href="/games"
            unread={unread}
            rename={(body, id, name) => ({ ...body, id, name })}
            onUndo={undo}
            onRedo={redo}
          />
        </div>
        {problems.length > 0 && (
          <div role="alert" className="loss">
            <p>{words().games.screen.problems}</p>
            <ul>
              {problems.slice(0, 10).map((problem) => (
                <li key={`${problem.path.join('/')} ${problem.message}`}>{problem.message}</li>
              ))}
            </ul>
          </div>
        )}
        <GameForms game={game} id={stored.id} />
        <GameText game={game} readOnly={old} onApply={draft.replace} />
        <div className="row">
          <ExportFile name={game.name} body={game} />
        </div>
      </div>
    </EditProvider>
  )
}
