import type { Game } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { freeId } from './field/fill.ts'
import { Members } from './forms/Members.tsx'
import { type Removed, withoutPiece } from './forms/references.ts'

/** The kinds of piece. */
export function PieceForms(props: { game: Game; onRemoved(removed: Removed, name: string): void }) {
  const { pieces } = props.game
  const edit = useEdit()
  const texts = words().games
  return (
    <section className="sheet stack" aria-labelledby="pieces-title">
      <h2 id="pieces-title">{texts.pieces.title}</h2>
      <Members
        place={['pieces']}
        items={pieces}
        one={texts.pieces.one}
        addLabel={texts.pieces.add}
        least={1}
        onAdd={() => {
          const id = freeId(new Set(pieces.map((piece) => piece.id)), 'piece-')
          edit.set(['pieces'], [...pieces, { id, name: texts.pieces.fresh(pieces.length + 1) }])
        }}
        onRemove={({ id, name }) => props.onRemoved(withoutPiece(props.game, id), name)}
      >
        {(_, index) => (
          <div className="form-grid">
            <TextField
              place={['pieces', index, 'name']}
              label={texts.members.name}
              help={texts.pieces.nameHelp}
              required
            />
          </div>
        )}
      </Members>
    </section>
  )
}
