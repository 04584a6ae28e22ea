import { NativeSelect } from '@mantine/core'
import type { Award, Game, Goal, Source } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { SelectField } from '../../../shell/fields/SelectField.tsx'
import { TextField } from '../../../shell/fields/TextField.tsx'
import { words } from '../../../words/catalogue.ts'
import { Choices, Present, YesNo } from './Choices.tsx'

function Slots(props: { place: Place }) {
  const texts = words().games.places
  return (
    <NumberField
      place={[...props.place, 'slots']}
      label={texts.slots}
      whole
      min={1}
      max={20}
      step={1}
      help={texts.slotsHelp}
    />
  )
}

/** A source: its piece, its stock and how that is filled up. */
export function SourceFields(props: { game: Game; source: Source; place: Place }) {
  const { game, source, place } = props
  const texts = words().games.places
  const known = game.pieces.some(({ id }) => id === source.piece)
  const pieces = game.pieces.map(({ id, name }) => ({ value: id, label: name }))
  return (
    <>
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={words().games.members.name} required />
        <SelectField
          place={[...place, 'piece']}
          label={texts.piece}
          choices={known ? pieces : [...pieces, { value: source.piece, label: source.piece }]}
        />
        <Slots place={place} />
      </div>
      <div className="row">
        <Present place={[...place, 'stock']} label={texts.finite} fresh={10} />
        <Present place={[...place, 'restock']} label={texts.restocked} fresh={{ every: 15, size: 2 }} />
        <YesNo place={[...place, 'shared']} label={texts.shared} />
      </div>
      <div className="form-grid">
        {source.stock !== null && (
          <NumberField place={[...place, 'stock']} label={texts.stock} whole min={0} max={10_000} step={1} />
        )}
        {source.restock && (
          <>
            <NumberField
              place={[...place, 'restock', 'every']}
              label={texts.every}
              unit="s"
              above={0}
              max={600}
              step={1}
            />
            <NumberField place={[...place, 'restock', 'size']} label={texts.size} whole min={1} max={1000} step={1} />
          </>
        )}
      </div>
    </>
  )
}

/** The same numbers under the other way to pay. */
function asKind(award: Award, kind: Award['kind']): Award {
  if (award.kind === kind) return award
  return award.kind === 'each'
    ? { kind: 'hold', autoPerSecond: 1, teleopPerSecond: 1 }
    : { kind: 'each', auto: 2, teleop: 1 }
}

/** A goal: what it takes, how much, and what it pays. */
export function GoalFields(props: { game: Game; goal: Goal; place: Place }) {
  const { game, goal, place } = props
  const edit = useEdit()
  const texts = words().games.places
  const points = words().games.rules.points
  const each = { unit: points, min: -10_000, max: 10_000, step: 1 }
  const second = { unit: points, min: -1000, max: 1000, step: 0.1 }
  return (
    <>
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={words().games.members.name} required />
        <Slots place={place} />
        <NativeSelect
          className="wide-choice"
          label={texts.award}
          disabled={edit.readOnly}
          value={goal.award.kind}
          data={[
            { value: 'each', label: texts.each },
            { value: 'hold', label: texts.hold },
          ]}
          onChange={(event) =>
            edit.set([...place, 'award'], asKind(goal.award, event.currentTarget.value as Award['kind']))
          }
        />
        {goal.award.kind === 'each' ? (
          <>
            <NumberField place={[...place, 'award', 'auto']} label={texts.pieceAuto} {...each} />
            <NumberField place={[...place, 'award', 'teleop']} label={texts.pieceTeleop} {...each} />
          </>
        ) : (
          <>
            <NumberField place={[...place, 'award', 'autoPerSecond']} label={texts.secondAuto} {...second} />
            <NumberField place={[...place, 'award', 'teleopPerSecond']} label={texts.secondTeleop} {...second} />
          </>
        )}
      </div>
      <Choices place={[...place, 'accepts']} label={texts.accepts} of={game.pieces} />
      <Present place={[...place, 'capacity']} label={texts.bounded} fresh={10} />
      {goal.capacity !== null && (
        <div className="form-grid">
          <NumberField place={[...place, 'capacity']} label={texts.capacity} whole min={0} max={10_000} step={1} />
        </div>
      )}
    </>
  )
}
