import { Checkbox, NativeSelect, TextInput } from '@mantine/core'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { RobotSign } from '../../../charts/RobotSign.tsx'
import { readNumber } from '../../../shell/fields/parse.ts'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'
import { positionName, signOf } from '../names.ts'
import { type Choice, marks } from './lineupSetup.ts'
import { able, mayMark, windowOf } from './roles.ts'

/** What one of our robots may do: what its way to play says, or any of the goals, finishes and opponents to mark that are ticked. */
export function RobotChoices(props: {
  game: Game
  option: Option
  position: number
  choice: Choice
  /** `field`: what is being typed in. */
  onChange(next: Choice, field?: string): void
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
          <fieldset className="ticks">
            <legend className="small">{text.marks}</legend>
            {marks.map((mark) => (
              <Checkbox
                key={mark}
                label={mark === 'nobody' ? text.nobody : positionName('theirs', Number(mark))}
                checked={choice.marks.includes(mark)}
                onChange={(event) => {
                  const ticked = event.currentTarget.checked
                  onChange({
                    ...choice,
                    marks: marks.filter((one) => (one === mark ? ticked : choice.marks.includes(one))),
                  })
                }}
              />
            ))}
          </fieldset>
          {mayMark(choice) && <Window game={game} option={option} choice={choice} onChange={onChange} />}
        </>
      )}
    </fieldset>
  )
}

/** Between which times left it marks. */
function Window(props: { game: Game; option: Option; choice: Choice; onChange(next: Choice, field?: string): void }) {
  const { game, option, choice, onChange } = props
  const text = words().lineup
  const limits = { min: 0, max: game.clock.teleop }
  const errors = (['from', 'until'] as const).map((key) => {
    const read = readNumber(choice[key], limits)
    return 'error' in read ? read.error : null
  })
  const empty = errors.every((error) => error === null) && windowOf(choice, game) === null
  return (
    <>
      <div className="row" style={{ alignItems: 'start' }}>
        {(['from', 'until'] as const).map((key, index) => (
          <TextInput
            key={key}
            label={text[key]}
            inputMode="decimal"
            autoComplete="off"
            w={150}
            value={choice[key]}
            rightSection={<span className="soft">s</span>}
            rightSectionPointerEvents="none"
            error={errors[index] ?? (empty && key === 'until' ? text.emptyWindow : null)}
            onChange={(event) => onChange({ ...choice, [key]: event.currentTarget.value }, `${choice.of} ${key}`)}
          />
        ))}
      </div>
      <p className="soft small">{option.robot.defence.slowdown > 0 ? text.marksHelp : text.slowsNobody}</p>
    </>
  )
}
