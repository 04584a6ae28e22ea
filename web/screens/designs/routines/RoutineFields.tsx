import type { Auto, Game, Option, Robot } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { SelectField } from '../../../shell/fields/SelectField.tsx'
import { TextField } from '../../../shell/fields/TextField.tsx'
import { spotName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { Choices, Present } from '../../games/forms/Choices.tsx'
import { PathEditor } from './PathEditor.tsx'
import { RoutineExpected } from './RoutineExpected.tsx'
import { Steps, Takes } from './Steps.tsx'

export interface RoutineProps {
  game: Game
  robot: Robot
  option: Option
  source: string
  auto: Auto
  place: Place
}

/** One routine: where it begins and ends, what it scores, what it takes, and its path. */
export function RoutineFields(props: RoutineProps) {
  const { game, robot, auto, place } = props
  const texts = words().routines
  const pieces = game.pieces.map(({ id, name }) => ({ value: id, label: name }))
  const carried = game.pieces.find(({ id }) => robot.carries[id] !== undefined)?.id ?? game.pieces[0]?.id ?? ''
  return (
    <>
      <RoutineExpected {...props} />
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={texts.name} required help={texts.id(auto.id)} />
        <NumberField
          place={[...place, 'leaves']}
          label={texts.leaves}
          percent
          min={0}
          max={1}
          step={1}
          help={texts.leavesHelp}
        />
        <SelectField
          place={[...place, 'endsAt']}
          label={texts.endsAt}
          help={texts.endsAtHelp}
          choices={endings(game, auto.endsAt)}
        />
      </div>
      <Choices place={[...place, 'starts']} label={texts.starts} of={game.starts} />
      <Present
        place={[...place, 'holding']}
        label={texts.holds}
        fresh={{
          piece: carried,
          count: robot.carries[carried] === undefined ? 1 : Math.min(1, robot.carries[carried]),
        }}
      />
      {auto.holding && (
        <div className="form-grid">
          <SelectField place={[...place, 'holding', 'piece']} label={texts.holding} choices={pieces} />
          <NumberField
            place={[...place, 'holding', 'count']}
            label={texts.holdingCount}
            unit={words().designs.robot.pieces}
            whole
            min={1}
            max={100}
            step={1}
          />
        </div>
      )}
      <Steps {...props} />
      <Takes {...props} />
      <PathEditor {...props} />
    </>
  )
}

/** Every start and spot, by name; what is chosen and gone keeps its id. */
function endings(game: Game, chosen: string) {
  const texts = words().routines
  const spots = [...game.sources, ...game.goals, ...game.finishes].flatMap((place) => place.spots)
  const all = [
    ...game.starts.map(({ id, name }) => ({ value: id, label: texts.startPoint(name) })),
    ...spots.map(({ id }) => ({ value: id, label: spotName(game, id) })),
  ]
  return all.some(({ value }) => value === chosen) ? all : [{ value: chosen, label: chosen }, ...all]
}
