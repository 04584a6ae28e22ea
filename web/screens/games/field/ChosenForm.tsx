import { Button } from '@mantine/core'
import { useMemo } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import type { Problem } from '../../../../src/model/errors.ts'
import { type Edit, EditProvider, useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { TextField } from '../../../shell/fields/TextField.tsx'
import { words } from '../../../words/catalogue.ts'
import { memoWords } from '../../../words/memo.tsx'
import { thingName } from './names.ts'
import { withCornerAt } from './obstacles.ts'
import { partnerOf } from './partner.ts'
import { isAbout, type Thing } from './things.ts'

export interface ChosenActions {
  onRemove(thing: Thing): void
  onBeside(thing: Thing): void
  onAddCorner(obstacle: number, edge: number): void
  onDrawPartner(obstacle: number): void
}

/** The numbers of what is chosen on the field: exact coordinates, name, and what can be done with it. */
export const ChosenForm = memoWords(function ChosenForm(props: {
  game: Game
  thing: Thing | null
  problems: readonly Problem[]
  alike: boolean
  actions: ChosenActions
}) {
  const { game, thing } = props
  const edit = useEdit()
  const texts = words().field.chosen
  if (!thing) return <p className="soft">{texts.none}</p>
  const found = props.problems.filter(({ path }) => isAbout(thing, path))
  const outline = thing.kind === 'obstacle' || thing.kind === 'corner'
  return (
    <div className="stack">
      <h4>{thingName(outline ? { ...thing, kind: 'obstacle' } : thing)}</h4>
      {found.map(({ path, message }) => (
        <p key={`${path.join('/')} ${message}`} className="loss">
          {message}
        </p>
      ))}
      {outline ? (
        <OutlineForm game={game} thing={thing} alike={props.alike} actions={props.actions} />
      ) : (
        <PointForm game={game} thing={thing} actions={props.actions} readOnly={edit.readOnly} />
      )}
    </div>
  )
})

function PointForm(props: { game: Game; thing: Thing; actions: ChosenActions; readOnly: boolean }) {
  const { game, thing, actions } = props
  const texts = words().field.chosen
  const last = thing.kind === 'spot' ? thing.of === 1 : game.starts.length === 1
  return (
    <>
      <div className="form-grid">
        {thing.kind === 'start' && <TextField place={[...thing.path, 'name']} label={texts.name} required />}
        <NumberField place={[...thing.path, 'at', 0]} label={texts.along} quantity="length" min={0} step={0.05} />
        <NumberField place={[...thing.path, 'at', 1]} label={texts.across} quantity="length" min={0} step={0.05} />
      </div>
      {!props.readOnly && (
        <div className="row">
          <Button size="compact-md" variant="default" onClick={() => actions.onBeside(thing)}>
            {texts.beside}
          </Button>
          <Button size="compact-md" variant="default" disabled={last} onClick={() => actions.onRemove(thing)}>
            {texts.remove}
          </Button>
          {last && <span className="soft small">{thing.kind === 'spot' ? texts.lastSpot : texts.lastStart}</span>}
        </div>
      )}
    </>
  )
}

/** Typed coordinates of a corner move its image on the other half too. */
function useAlike(game: Game, alike: boolean): Edit {
  const edit = useEdit()
  return useMemo(
    () => ({
      ...edit,
      set: (place, value, group) => {
        const [, list, obstacle, outline, corner, axis] = place
        if (list !== 'obstacles' || outline !== 'outline' || axis === undefined) return edit.set(place, value, group)
        const index = obstacle as number
        const to = [...game.field.obstacles[index]!.outline[corner as number]!] as Point
        to[axis as 0 | 1] = value as number
        const at = { obstacle: index, corner: corner as number, alike }
        edit.set(['field', 'obstacles'], withCornerAt(game.field, at, to), group)
      },
    }),
    [edit, game, alike],
  )
}

function OutlineForm(props: {
  game: Game
  thing: Extract<Thing, { kind: 'obstacle' | 'corner' }>
  alike: boolean
  actions: ChosenActions
}) {
  const { game, thing, alike, actions } = props
  const edit = useAlike(game, alike)
  const texts = words().field.chosen
  const obstacle = game.field.obstacles[thing.index]!
  const partner = useMemo(() => partnerOf(game.field, thing.index), [game.field, thing.index])
  const few = obstacle.outline.length <= 3
  return (
    <EditProvider value={edit}>
      <TextField place={['field', 'obstacles', thing.index, 'name']} label={texts.name} required />
      <p className="soft small">
        {partner === null
          ? texts.alone
          : partner.index === thing.index
            ? texts.itself
            : texts.partner(game.field.obstacles[partner.index]!.name)}
      </p>
      <ol className="corner-list">
        {obstacle.outline.map((_, corner) => {
          const place = ['field', 'obstacles', thing.index, 'outline', corner]
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner has nothing of its own but its place
            <li key={corner} aria-current={thing.kind === 'corner' && thing.corner === corner ? 'true' : undefined}>
              <NumberField place={[...place, 0]} label={texts.cornerAlong(corner + 1)} quantity="length" step={0.05} />
              <NumberField place={[...place, 1]} label={texts.cornerAcross(corner + 1)} quantity="length" step={0.05} />
              {!edit.readOnly && (
                <span className="row">
                  <Button
                    size="compact-sm"
                    variant="default"
                    aria-label={texts.addCorner(corner + 1)}
                    onClick={() => actions.onAddCorner(thing.index, corner)}
                  >
                    {texts.short.add}
                  </Button>
                  <Button
                    size="compact-sm"
                    variant="default"
                    disabled={few}
                    aria-label={texts.removeCorner(corner + 1)}
                    onClick={() => actions.onRemove(asCorner(thing, obstacle.outline, corner))}
                  >
                    {texts.short.remove}
                  </Button>
                </span>
              )}
            </li>
          )
        })}
      </ol>
      {few && <p className="soft small">{texts.leastCorners}</p>}
      {!edit.readOnly && (
        <div className="row">
          {partner === null && (
            <Button size="compact-md" variant="default" onClick={() => actions.onDrawPartner(thing.index)}>
              {texts.draw}
            </Button>
          )}
          <Button
            size="compact-md"
            variant="default"
            onClick={() => actions.onRemove({ ...thing, kind: 'obstacle' } as Thing)}
          >
            {texts.remove}
          </Button>
        </div>
      )}
    </EditProvider>
  )
}

const asCorner = (thing: Thing & { index: number }, outline: readonly Point[], corner: number): Thing => ({
  kind: 'corner',
  key: `field/obstacles/${thing.index}/outline/${corner}`,
  path: ['field', 'obstacles', thing.index, 'outline', corner],
  index: thing.index,
  corner,
  of: outline.length,
  id: thing.id,
  name: thing.name,
  at: outline[corner]!,
})
