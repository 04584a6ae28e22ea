import { useMemo } from 'react'
import { checkGame } from '../../../src/model/documents/index.ts'
import { FieldMap } from '../../charts/FieldMap.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type Stored, useStored } from '../../data/documents.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { plain } from '../../words/format.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing, useRevisionAsked } from '../documents/useEditing.ts'
import { GameText } from './GameText.tsx'
import { PlaceForms } from './PlaceForms.tsx'
import { RuleForms } from './RuleForms.tsx'
import '../designs/designs.css'

/** The season's rules and the field, to scale. */
export default function GameScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('game', props.id, revision)
  if (stored.isPending) return <Loading what="the game" />
  if (stored.error)
    return <Trouble title="The game could not be loaded" error={stored.error} retry={() => void stored.refetch()} />
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
            <p className="label">Game</p>
            <h1>{game.name || 'Without a name'}</h1>
          </div>
          <SaveBar of={editing} href="/games" />
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
