import { Checkbox, NativeSelect } from '@mantine/core'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { RobotSign } from '../../../charts/RobotSign.tsx'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { positionName, signOf } from '../names.ts'
import { able, type Choice } from './roles.ts'

/** What one of our robots may do: what its way to play says, or any of the goals and finishes that are ticked. */
export function RobotChoices(props: {
  game: Game
  option: Option
  position: number
  choice: Choice
  onChange(next: Choice): void
}) {
  const { game, option, position, choice, onChange } = props
  const text = words().lineup
  const can = able(option, game)
  const name = positionName('ours', position)
  const ticks = (kind: 'goals' | 'finishes') => (
    <fieldset className="ticks">
      <legend className="small">{text[kind]}</legend>
      {can[kind].map((id) => (
        <Checkbox
          key={id}
          label={placeName(game, id)}
          checked={choice[kind].includes(id)}
          onChange={(event) => {
            const ticked = event.currentTarget.checked
            onChange({
              ...choice,
              [kind]: can[kind].filter((one) => (one === id ? ticked : choice[kind].includes(one))),
            })
          }}
        />
      ))}
    </fieldset>
  )
  return (
    <fieldset className="stack alliance ours" aria-label={name}>
      <legend>
        <span className="robot-name">
          <RobotSign side="ours" sign={signOf(position)} />
          {option.name}
        </span>
      </legend>
      <NativeSelect
        label={text.role}
        value={choice.settled ? 'settled' : 'free'}
        data={[
          { value: 'free', label: text.free },
          { value: 'settled', label: text.settled },
        ]}
        onChange={(event) => onChange({ ...choice, settled: event.currentTarget.value === 'settled' })}
      />
      {!choice.settled && (
        <>
          {can.goals.length > 0 && ticks('goals')}
          {option.finish.mode === 'skip' ? (
            <p className="soft small">{text.skips}</p>
          ) : (
            can.finishes.length > 0 && ticks('finishes')
          )}
        </>
      )}
    </fieldset>
  )
}
