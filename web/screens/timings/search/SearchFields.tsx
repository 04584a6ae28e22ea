import { Checkbox, TextInput } from '@mantine/core'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { mostMotorCounts, type readSearch, type SearchTexts } from './first.ts'

type Read = ReturnType<typeof readSearch>

const units: { readonly [Name in keyof SearchTexts]?: string } = {
  motorCurrent: 'A',
  sourceCurrent: 'A',
  sourceVoltage: 'V',
}

const fields = ['low', 'high', 'motorCurrent', 'sourceCurrent', 'sourceVoltage'] as const

/** What is tried, and what may not be exceeded. */
export function SearchFields(props: {
  texts: SearchTexts
  read: Read
  motors: readonly number[]
  present: number
  onTexts(texts: SearchTexts): void
  onMotors(motors: number[]): void
}) {
  const { texts, read, motors } = props
  const text = words().search
  const errors = 'errors' in read ? read.errors : {}
  const choices = [...new Set([1, 2, 3, 4, 5, 6, 7, 8, ...motors, props.present])].sort((a, b) => a - b)
  const trouble = motorsTrouble(motors)
  return (
    <>
      <div className="form-grid search-fields">
        {fields.map((name) => (
          <TextInput
            key={name}
            label={text[name]}
            description={units[name] ? text.free : undefined}
            value={texts[name]}
            error={errors[name]}
            inputMode="decimal"
            autoComplete="off"
            rightSection={units[name] && <span className="soft">{units[name]}</span>}
            rightSectionPointerEvents="none"
            onChange={(event) => props.onTexts({ ...texts, [name]: event.currentTarget.value })}
          />
        ))}
      </div>
      <fieldset className="search-motors">
        <legend>{text.motors}</legend>
        <div className="row">
          {choices.map((count) => (
            <Checkbox
              key={count}
              label={plain(count)}
              aria-label={text.motorsOf(count)}
              checked={motors.includes(count)}
              onChange={(event) =>
                props.onMotors(
                  event.currentTarget.checked
                    ? [...motors, count].sort((a, b) => a - b)
                    : motors.filter((each) => each !== count),
                )
              }
            />
          ))}
        </div>
        {trouble && <p role="alert">{trouble}</p>}
      </fieldset>
    </>
  )
}

/** What is wrong with the numbers of motors; null: nothing. */
export function motorsTrouble(motors: readonly number[]): string | null {
  if (motors.length === 0) return words().search.motorsNone
  return motors.length > mostMotorCounts ? words().search.motorsMany(mostMotorCounts) : null
}
