import type { Pack } from '../data/shapes.ts'
import { Field } from '../parts/Field.tsx'
import { useMoreWords } from '../words/more.ts'

/** What was chosen: a team of the event, or one that is typed because the list lacks it. */
export interface ChosenTeam {
  listed: string
  typed: string
}

const form = /^[A-Za-z0-9-]{1,12}$/

export const noTeam: ChosenTeam = { listed: '', typed: '' }

/** The team; null: none, or no number of one. */
export function teamOf({ listed, typed }: ChosenTeam): string | null {
  const team = listed === 'other' ? typed.trim() : listed
  return form.test(team) ? team : null
}

/** Which team it is about. */
export function TeamChoice(props: {
  pack: Pack
  value: ChosenTeam
  missing: boolean
  choose(value: ChosenTeam): void
}) {
  const { pack, value, missing } = props
  const { pit } = useMoreWords()
  return (
    <>
      <div className="field">
        <label htmlFor="team">{pit.team}</label>
        <select
          id="team"
          value={value.listed}
          aria-invalid={missing || undefined}
          aria-describedby={missing ? 'team-missing' : undefined}
          onChange={(event) => props.choose({ ...value, listed: event.currentTarget.value })}
        >
          <option value="" />
          {pack.event.teams.map(({ team, name }) => (
            <option key={team} value={team}>
              {name ? `${team} · ${name}` : team}
            </option>
          ))}
          <option value="other">{pit.otherTeam}</option>
        </select>
        {missing && value.listed === '' && (
          <p id="team-missing" className="wrong">
            {pit.teamMissing}
          </p>
        )}
      </div>
      {value.listed === 'other' && (
        <Field
          label={pit.teamNumber}
          value={value.typed}
          error={missing ? pit.teamWrong : null}
          change={(typed) => props.choose({ ...value, typed })}
        />
      )}
    </>
  )
}
