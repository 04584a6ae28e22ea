import { useMemo } from 'react'
import { useSearchParams } from 'wouter'
import { checkGame } from '../../../src/model/documents/index.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { FieldMap } from '../../charts/FieldMap.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type Stored, useStored } from '../../data/documents.ts'
import { useDraft } from '../../data/draft.ts'
import { type Edit, EditProvider } from '../../shell/fields/EditContext.tsx'
import { useTexts } from '../../shell/fields/useTexts.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { useUndoKeys } from '../../shell/useUndoKeys.ts'
import { plain } from '../../words/format.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { GameText } from './GameText.tsx'
import { PlaceForms } from './PlaceForms.tsx'
import { RuleForms } from './RuleForms.tsx'
import '../designs/designs.css'

/** The season's rules and the field, to scale. */
export default function GameScreen(props: { id: string }) {
  const [search] = useSearchParams()
  const asked = Number(search.get('revision'))
  const revision = Number.isInteger(asked) && asked > 0 ? asked : undefined
  const stored = useStored('game', props.id, revision)
  if (stored.isPending) return <Loading what="the game" />
  if (stored.error)
    return <Trouble title="The game could not be loaded" error={stored.error} retry={() => void stored.refetch()} />
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
            <p className="label">Game</p>
            <h1>{game.name || 'Without a name'}</h1>
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
            <p>The rules do not fit together yet:</p>
            <ul>
              {problems.slice(0, 10).map((problem) => (
                <li key={`${problem.path.join('/')} ${problem.message}`}>{problem.message}</li>
              ))}
            </ul>
          </div>
        )}
        <section className="sheet stack" aria-labelledby="field-title">
          <h2 id="field-title">The field</h2>
          <Figure
            title="The field, to scale"
            hideTitle
            table={{
              head: ['Place', 'Letter', 'x, m', 'y, m'],
              rows: (['sources', 'goals', 'finishes'] as const).flatMap((kind) =>
                game[kind].flatMap((place, index) =>
                  place.spots.map((spot) => [
                    `${place.name} (${spot.id})`,
                    `${{ sources: 'S', goals: 'G', finishes: 'F' }[kind]}${index + 1}`,
                    plain(spot.at[0], 2),
                    plain(spot.at[1], 2),
                  ]),
                ),
              ),
            }}
          >
            <Measured most={960}>{(width) => <FieldMap game={game} width={width} />}</Measured>
          </Figure>
          <p className="soft small">
            Own wall to the left. S sources: {names(game.sources)}. G goals: {names(game.goals)}. F finishes:{' '}
            {names(game.finishes)}. Squares are starts, hatched are obstacles.
          </p>
        </section>
        <RuleForms game={game} />
        <PlaceForms game={game} />
        <GameText game={game} readOnly={old} onApply={draft.replace} />
        <div className="row">
          <ExportFile name={game.name} body={game} />
          <span className="soft small">
            What can not be said here goes into an adjustment of a way to play, by name.
          </span>
        </div>
      </div>
    </EditProvider>
  )
}

const names = (places: readonly { name: string }[]): string =>
  places.map(({ name }, index) => `${index + 1} ${name}`).join(', ')
